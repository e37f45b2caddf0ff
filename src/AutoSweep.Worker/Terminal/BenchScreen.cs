using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>Chooses the screen that fits where the output goes.</summary>
public static class BenchScreen
{
    /// <summary>A moving panel on a terminal that can redraw; a line an event in a file, a pipe, a small window, or where keys are
    /// typed.</summary>
    public static IBenchScreen For(JobPlan plan, JobRecord record, BenchBoard board)
    {
        var console = AnsiConsole.Console;
        var canRedraw = console.Profile.Capabilities.Ansi && console.Profile.Out.IsTerminal
            && console.Profile.Width >= LivePanel.Width && console.Profile.Height >= LivePanel.Height;
        return canRedraw && plan.HandsFree && !plan.Wiring.IsTyped ? new LivePanel(console, record, board) : new LinePrinter(Console.Out, record, board);
    }
}
