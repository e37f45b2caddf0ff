using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>The width of what is not a terminal.</summary>
public static class ConsoleWidth
{
    /// <summary>A pipe or a file gets room for whole tables.</summary>
    public static void WideWhenPiped()
    {
        if (!AnsiConsole.Profile.Out.IsTerminal)
            AnsiConsole.Profile.Width = 120;
    }
}
