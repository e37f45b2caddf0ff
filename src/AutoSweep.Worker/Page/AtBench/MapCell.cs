using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Page.AtBench;

/// <summary>One output on the map.</summary>
/// <param name="Output">Its number.</param>
/// <param name="Stand">How it stands.</param>
/// <param name="IsNext">Whether the plan has it next.</param>
public sealed record MapCell(int Output, OutputStand Stand, bool IsNext)
{
    /// <summary>The sign: no state is told by its colour alone.</summary>
    public string Sign => SignOf(Stand);

    /// <summary>The state in words.</summary>
    public string Word => WordOf(Stand);

    /// <summary>The sign of a state.</summary>
    public static string SignOf(OutputStand stand) => stand switch
    {
        OutputStand.AtClips => "▶",
        OutputStand.Open => "·",
        OutputStand.Done => "✓",
        OutputStand.Look => "!",
        _ => "",
    };

    /// <summary>A state in words, for the legend and for who hears the page.</summary>
    public static string WordOf(OutputStand stand) => stand switch
    {
        OutputStand.AtClips => "at the clips",
        OutputStand.Open => "to do",
        OutputStand.Done => "done",
        OutputStand.Look => "look at it",
        _ => "not in this stage",
    };
}
