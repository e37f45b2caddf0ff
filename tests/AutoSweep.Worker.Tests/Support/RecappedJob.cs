using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A job that has been through every stage, each output with figures of its own.</summary>
internal sealed class RecappedJob : IDisposable
{
    private readonly TemporaryFolder _parent = new();

    public RecappedJob(string name = "job", bool whole = true)
    {
        Folder = Path.Combine(_parent.Path, name);
        using var job = JobRecord.Begin(JobFolder.Open(Folder), Some.Profile, "AutoSweep test", TimeProvider.System);
        if (whole)
            Fill(job);
    }

    public string Folder { get; }

    public JobReading Reading => JobReading.Read(Folder);

    public ReportSource Source => new(Reading, new(2026, 3, 2, 17, 0, 0, TimeSpan.FromHours(1))) { Stock = Stock };

    // The ledger knows one old capacitor and one part.
    private StockState Stock => StockState.Empty
        .Apply(new(1, default, new PartsTakenIn([Some.Part("P00001", 52_000) with { Dielectric = "polypropylene", RatedVolts = 400 }])))
        .Apply(new(2, default, new OldCapacitorRemoved(StockJob.NameOf(Reading.State), 9, new(131_240, 300, default), 105_000, "leaks wax")));

    public void Dispose() => _parent.Dispose();

    private static void Fill(JobRecord job)
    {
        int[] all = [.. Some.Profile.Outputs.Select(output => output.Number)];
        int[] filtered = [.. Some.Profile.FilteredOutputs.Select(output => output.Number)];
        job.Append(new BenchConnected { MeterResource = "m", MeterIdentity = "Maker,Meter,SN-17,1.0", MeterDriver = "scpi-dmm", AmplifierGain = 20,
            FixtureSerial = "BOX-3", FixtureCalibrated = new(2026, 1, 15), FixtureCalibratedWith = "LCR meter SN-4", FixtureRelativeUncertainty = 0.0008 });
        job.Append(new StageStarted(JobStage.Survey, all));
        foreach (var output in all)
            job.Append(Some.Surveyed(output) with { Millivolts = 3.1 + (0.0731 * output), RelativeUncertainty = 0.008 });
        job.Append(new StageEnded(JobStage.Survey));
        job.Append(new StageStarted(JobStage.Sweep, filtered));
        foreach (var output in filtered)
        {
            job.Append(new OutputRecognised(JobStage.Sweep, output, 740.123456, RecognisedBy.Tone));
            foreach (var (picofarads, share) in new[] { (96_900L, 0.707), (104_500L, 1.0), (112_300L, 0.707) })
                job.Append(Read(output, picofarads, 5.372 * share));
            job.Append(Some.Swept(output) with { PeakPicofarads = 104_567 + (37 * output), PeakMillivolts = 5.372 + (0.01 * output) });
        }

        foreach (var output in filtered)
        {
            job.Append(new OutputFitted { Output = output, Parts = ["P00001", $"P1{output:0000}"],
                MeasuredPicofarads = 104_600 + (37 * output), StandardUncertaintyPicofarads = 52.4, WantedPicofarads = 104_567, LossDecibels = 0.00123 + (0.0001 * output), Meter = "Maker,Lcr,SN-4,1.0", LedgerSequence = 3 });
        }

        job.Append(new StageStarted(JobStage.Check, filtered));
        foreach (var output in filtered)
        {
            job.Append(new OutputChecked { Output = output, Millivolts = 5.31 + (0.013 * output), PredictedMillivolts = 5.37 + (0.01 * output),
                StandardUncertaintyDecibels = 0.09, IsExplained = output != 10 });
        }

        job.Append(new OutputLevelled { Output = 2, Ending = GuidanceEnding.NearContact, Moves = 2, TargetMillivolts = 5 });
        job.Append(new StageStarted(JobStage.AsLeft, all));
        foreach (var output in all.SkipLast(1))
            job.Append(Some.Surveyed(output) with { Stage = JobStage.AsLeft, Millivolts = 5.02 - (0.0173 * output), RelativeUncertainty = 0.0061 });
    }

    private static LevelRead Read(int output, long picofarads, double millivolts) => new()
    {
        Stage = JobStage.Sweep, Output = output, Picofarads = picofarads, Millivolts = millivolts, RelativeNoise = 0.002, Samples = 3, Settled = true, Seconds = 2,
    };
}
