using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Reports;

/// <summary>An instrument that took readings of the job.</summary>
/// <param name="Role">What it is on the bench.</param>
/// <param name="Identity">Its own answer to the question who it is, or its serial number; "typed values" for none.</param>
/// <param name="Calibrated">The day of its calibration; none where nobody has said.</param>
/// <param name="CalibratedBy">Who or what calibrated it.</param>
/// <param name="Accuracy">What is known of its accuracy, in words.</param>
/// <param name="Entry">The first journal entry that names it.</param>
public sealed record ReportInstrument(string Role, string Identity, DateOnly? Calibrated, string? CalibratedBy, string? Accuracy, long? Entry)
{
    /// <summary>The instruments of a job, each once.</summary>
    public static IReadOnlyList<ReportInstrument> Of(IEnumerable<JournalEntry> entries, ShopSettings? shop) =>
        [.. entries.SelectMany(Named).DistinctBy(one => (one.Role, one.Identity, one.Calibrated)).Select(one => one.With(shop))];

    private static IEnumerable<ReportInstrument> Named(JournalEntry entry) => entry.Event switch
    {
        BenchConnected bench => [Meter(bench, entry.Sequence), .. Fixture(bench, entry.Sequence)],
        OutputFitted fitted => [new("capacitance meter", fitted.Meter ?? "typed values", null, null, null, entry.Sequence)],
        _ => [],
    };

    private static ReportInstrument Meter(BenchConnected bench, long entry) => new(
        bench.AmplifierGain == 1 ? "level meter" : FormattableString.Invariant($"level meter, behind an amplifier of gain {bench.AmplifierGain:0.###}"),
        bench.MeterIdentity, null, null, $"driver {bench.MeterDriver}", entry);

    private static IEnumerable<ReportInstrument> Fixture(BenchConnected bench, long entry)
    {
        if (bench.FixtureSerial is not { } serial)
            yield break;
        var accuracy = bench.FixtureRelativeUncertainty is { } share
            ? FormattableString.Invariant($"standard uncertainty at most {100 * share:0.00} % of the largest total") : null;
        yield return new("relay fixture", serial, bench.FixtureCalibrated, bench.FixtureCalibratedWith, accuracy, entry);
    }

    private ReportInstrument With(ShopSettings? shop) =>
        shop?.Instruments.FirstOrDefault(known => Identity.Contains(known.Identity, StringComparison.OrdinalIgnoreCase)) is not { } known ? this
        : this with { Calibrated = Calibrated ?? known.Calibrated, CalibratedBy = CalibratedBy ?? known.By, Accuracy = known.Accuracy ?? Accuracy };
}
