using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>The terminal's own lines on gaps; they go above a bar that shows how far the work is.</summary>
internal static class GapScreen
{
    /// <summary>The lines.</summary>
    public static GapLines Lines { get; } = new(text => AnsiConsole.WriteLine(text), bell => AnsiConsole.Profile.Out.Writer.Write(bell));
}
