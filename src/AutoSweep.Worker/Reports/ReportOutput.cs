using AutoSweep.Core.Curve;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Reports;

/// <summary>All that the job knows of one output.</summary>
public sealed record ReportOutput
{
    /// <summary>The output's number.</summary>
    public required int Output { get; init; }

    /// <summary>What stands between pickup and terminal.</summary>
    public required FilterKind Filter { get; init; }

    /// <summary>The tone at nominal mains frequency, in hertz.</summary>
    public required double NominalHertz { get; init; }

    /// <summary>The tone that was counted last, in hertz; none where it never was.</summary>
    public double? CountedHertz { get; init; }

    /// <summary>The level as found.</summary>
    public ReportLevel? AsFound { get; init; }

    /// <summary>The level with new capacitors; none where nothing was fitted and checked.</summary>
    public ReportLevel? AfterRecap { get; init; }

    /// <summary>The level as left.</summary>
    public ReportLevel? AsLeft { get; init; }

    /// <summary>The level on the last curve that was read: the stand by which the output is judged.</summary>
    public ReportLevel? Now { get; init; }

    /// <summary>What the first survey noticed.</summary>
    public IReadOnlyList<SurveyFinding> FlagsAsFound { get; init; } = [];

    /// <summary>What the last survey noticed.</summary>
    public IReadOnlyList<SurveyFinding> FlagsAsLeft { get; init; } = [];

    /// <summary>The capacitor that was taken off, where it was logged.</summary>
    public ReportOldCapacitor? OldCapacitor { get; init; }

    /// <summary>What the sweep found.</summary>
    public ReportPeak? Peak { get; init; }

    /// <summary>What was soldered in.</summary>
    public ReportFitted? Fitted { get; init; }

    /// <summary>The level with it against the prediction.</summary>
    public ReportCheck? Check { get; init; }

    /// <summary>What was done at its magnet.</summary>
    public ReportMagnet? Magnet { get; init; }

    /// <summary>What is known of an output.</summary>
    public static ReportOutput Of(GeneratorOutput output, JobState state, ReportCurves curves, JournalPlaces places, StockState? stock)
    {
        var number = output.Number;
        var (found, left) = (state.Surveyed.GetValueOrDefault(number), state.AsLeft.GetValueOrDefault(number));
        var (swept, fitted, seen) = (state.Swept.GetValueOrDefault(number), state.Fitted.GetValueOrDefault(number), state.Checked.GetValueOrDefault(number));
        return new()
        {
            Output = number,
            Filter = output.Filter,
            NominalHertz = state.Profile!.ToneOf(output).Hertz,
            CountedHertz = left?.ToneHertz ?? seen?.ToneHertz ?? (swept is { ToneHertz: > 0 and var tone } ? tone : (double?)null) ?? found?.ToneHertz,
            AsFound = curves.At(CurveStand.AsFound, number, places.Of(found)),
            AfterRecap = seen is null ? null : curves.At(CurveStand.AfterRecap, number, places.Of(seen)),
            AsLeft = curves.At(CurveStand.AsLeft, number, places.Of(left)),
            Now = curves.Curves.Count == 0 ? null : curves.At(curves.Curves[^1].Stand, number, places.Of(left) ?? places.Of(seen) ?? places.Of(found)),
            FlagsAsFound = found?.Flags ?? [],
            FlagsAsLeft = left?.Flags ?? [],
            OldCapacitor = ReportOldCapacitor.Of(stock?.OldCapacitors.GetValueOrDefault(new(StockJob.NameOf(state), number))),
            Peak = swept is null ? null : ReportPeak.Of(state, swept, places),
            Fitted = fitted is null ? null : ReportFitted.Of(fitted, places),
            Check = seen is null ? null : ReportCheck.Of(seen, places),
            Magnet = state.Levelled.GetValueOrDefault(number) is { } levelled ? ReportMagnet.Of(levelled, places) : null,
        };
    }
}
