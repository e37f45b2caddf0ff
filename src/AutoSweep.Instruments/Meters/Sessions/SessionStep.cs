namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>One call of a session: what the worker does, what the wire carries, what comes of it.</summary>
/// <param name="LineNumber">Where it stands in the file, from 1.</param>
/// <param name="Call">The line after <c>!</c>; <see cref="SessionPlayer"/> has the calls there are.</param>
/// <param name="Wire">What goes over the wire, in order.</param>
/// <param name="Outcome">The line after <c>=</c>, or null.</param>
public sealed record SessionStep(int LineNumber, string Call, IReadOnlyList<SessionLine> Wire, string? Outcome);
