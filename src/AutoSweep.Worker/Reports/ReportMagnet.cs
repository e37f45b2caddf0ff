using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;

namespace AutoSweep.Worker.Reports;

/// <summary>What was done at an output's magnet.</summary>
/// <param name="Moves">How many moves were made.</param>
/// <param name="Ending">Why the work ended.</param>
/// <param name="BeforeMillivolts">The level before the first move in millivolts rms; none where it was not read.</param>
/// <param name="AfterMillivolts">The level after the last.</param>
/// <param name="TargetMillivolts">What it was to be.</param>
/// <param name="SlopeDecibelsPerMillimetre">What a millimetre changes this rod's level by, in decibels; none where no move told.</param>
/// <param name="Entry">The journal entry.</param>
public sealed record ReportMagnet(
    int Moves, GuidanceEnding Ending, double? BeforeMillivolts, double? AfterMillivolts, double TargetMillivolts, double? SlopeDecibelsPerMillimetre,
    long? Entry)
{
    /// <summary>The work in a few words, such as <c>2 moves</c>; why it ended where that is not the band.</summary>
    public string Words => (Moves == 1 ? "1 move" : FormattableString.Invariant($"{Moves} moves")) + Ending switch
    {
        GuidanceEnding.InBand => "",
        GuidanceEnding.NearContact => "; no nearer, for contact",
        GuidanceEnding.NoEffect => "; without effect",
        GuidanceEnding.WrongWay => "; went the wrong way",
        GuidanceEnding.Unsteady => "; level unsteady",
        GuidanceEnding.BudgetSpent => "; moves used up",
        _ => "; left alone",
    };

    /// <summary>The outcome of the work, with its place in the journal.</summary>
    public static ReportMagnet Of(OutputLevelled levelled, JournalPlaces places) => new(
        levelled.Moves, levelled.Ending, levelled.BeforeMillivolts, levelled.AfterMillivolts, levelled.TargetMillivolts,
        levelled.SlopeDecibelsPerMillimetre, places.Of(levelled));
}
