using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>The map of all outputs with their state, in sign and colour.</summary>
public static class OutputMap
{
    private const int Columns = 24;

    /// <summary>The map for the stage at work.</summary>
    public static IRenderable Draw(JobState state, BenchStatus status)
    {
        if (state.Profile is not { } profile || status.Stage is not { } stage)
            return new Text(" ");
        var rows = profile.Outputs.Select(output => Cell(state, status, stage, output.Number)).Chunk(Columns)
            .Select(row => new Markup(string.Concat(row)));
        return new Rows([.. rows, new Markup("[grey]▶ at the clips   ✓ done   ! look at it   · to do   (blank: not in this stage)[/]")]);
    }

    private static string Cell(JobState state, BenchStatus status, JobStage stage, int output)
    {
        var (sign, colour) = Sign(state, status, stage, output);
        return $"[{colour}]{output,3}{sign}[/]";
    }

    private static (char Sign, string Colour) Sign(JobState state, BenchStatus status, JobStage stage, int output) =>
        OutputStands.Of(state, status, stage, output) switch
        {
            OutputStand.AtClips => ('▶', "bold yellow"),
            OutputStand.Open => ('·', "grey"),
            OutputStand.Done => ('✓', "green"),
            OutputStand.Look => ('!', "bold red"),
            _ => (' ', "grey35"),
        };
}
