using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>The console with room for a table where it is no terminal and so has no width of its own.</summary>
internal static class PlainWidth
{
    public static IAnsiConsole Console()
    {
        if (!AnsiConsole.Profile.Out.IsTerminal)
            AnsiConsole.Profile.Width = 140;
        return AnsiConsole.Console;
    }
}
