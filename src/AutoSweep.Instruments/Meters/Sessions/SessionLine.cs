namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>A line on the wire, as a session file has it.</summary>
/// <param name="LineNumber">Where it stands in the file, from 1.</param>
/// <param name="ToMeter">Whether it goes to the meter (<c>&gt;</c>) or comes from it (<c>&lt;</c>).</param>
/// <param name="Text">The line without its mark and its terminator.</param>
public sealed record SessionLine(int LineNumber, bool ToMeter, string Text)
{
    /// <summary>The line as the file writes it.</summary>
    public override string ToString() => $"{(ToMeter ? '>' : '<')} {Text}";
}
