using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Levelling;
using AutoSweep.Worker.Page.Shared;

namespace AutoSweep.Worker.Page.Levels;

/// <summary>What a person says before the magnets are touched, as typed.</summary>
public sealed class LevellingWish
{
    private const double MostGapMillimetres = 10, LeastBandDecibels = 0.05, MostBandDecibels = 6;

    private const int LongestName = 60;

    /// <summary>The leaf that went in between every rod and its wheel, in millimetres; empty where nobody has put one in.</summary>
    public string LeastGap { get; set; } = "";

    /// <summary>Thicker leaves at single outputs: 61=0.45, separated by blanks.</summary>
    public string Gaps { get; set; } = "";

    /// <summary>How far a level may be off its target to either side, in decibels.</summary>
    public string Band { get; set; } = new MagnetGuidanceOptions().HalfBandDecibels.ToString(CultureInfo.InvariantCulture);

    /// <summary>This job changes no capacitors.</summary>
    public bool WithoutRecap { get; set; }

    /// <summary>The caution was read and understood.</summary>
    public bool IsUnderstood { get; set; }

    /// <summary>By whom: a name or initials.</summary>
    public string By { get; set; } = "";

    /// <summary>What it comes to; nobody has acknowledged the hazard yet. Good for an order of work, not for work.</summary>
    /// <exception cref="BenchFaultException">A field that cannot be used.</exception>
    public LevellingOptions Read() => new()
    {
        LeastGapMillimetres = TypedField.NumberOrNone(LeastGap, "the leaf that went in everywhere, in mm", 0, MostGapMillimetres)
            ?? MagnetRod.UnmeasuredGapMillimetres,
        Gaps = ReadGaps(),
        WithoutRecap = WithoutRecap,
        Guidance = new() { HalfBandDecibels = TypedField.Number(Band, "the band in dB", LeastBandDecibels, MostBandDecibels) },
    };

    /// <summary>The same with the hazard acknowledged, in words for the journal.</summary>
    /// <exception cref="BenchFaultException">A field that cannot be used, no tick, or no name.</exception>
    public LevellingOptions ReadAcknowledged()
    {
        var options = Read();
        if (!IsUnderstood)
            throw new BenchFaultException(BenchFault.StageNotReady, "the caution is not ticked",
                "a tick: read and understood", "read the caution above and tick it");
        var by = TypedField.Text(By, "who has read the caution", LongestName);
        return options with { Acknowledged = $"ticked on the bench page by {by}" };
    }

    // A gap that is named twice counts as the smaller one.
    private Dictionary<int, double> ReadGaps() => Gaps
        .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(ReadGap).GroupBy(gap => gap.Output)
        .ToDictionary(one => one.Key, one => one.Min(gap => gap.Millimetres));

    private static (int Output, double Millimetres) ReadGap(string typed) => typed.Split('=') is [var output, var gap]
        ? (TypedField.Whole(output, $"the output of \"{typed}\""), TypedField.Number(gap, $"the leaf of \"{typed}\", in mm", 0, MostGapMillimetres))
        : throw new BenchFaultException(BenchFault.BadFile, $"\"{typed}\" as the leaf at one output",
            "an output and millimetres, as in 61=0.45", "correct this field");
}
