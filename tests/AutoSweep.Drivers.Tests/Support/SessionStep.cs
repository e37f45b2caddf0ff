namespace AutoSweep.Drivers.Tests.Support;

/// <summary>One call of a recorded session: what the worker does, what the wire carries, what comes of it.</summary>
/// <param name="LineNumber">Where it stands in the file.</param>
/// <param name="Call">The line after <c>!</c>, cut at blanks.</param>
/// <param name="Wire">The lines after <c>&gt;</c> (to the meter) and <c>&lt;</c> (from it), with their mark.</param>
/// <param name="Outcome">The line after <c>=</c>, or null.</param>
public sealed record SessionStep(int LineNumber, string[] Call, IReadOnlyList<string> Wire, string? Outcome);
