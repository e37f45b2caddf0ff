using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>Values that stand for "some" where a test does not care which.</summary>
internal static class Some
{
    public static GeneratorProfile Profile { get; } = GeneratorProfileLibrary.Open("invented-smallbench-14-60hz");

    /// <summary>A match that ends when it is proven, however slow the machine.</summary>
    public static MatchOptions Patient { get; } = new() { TimeLimit = TimeSpan.FromMinutes(10) };

    public static JobRecord Job(TemporaryFolder folder, GeneratorProfile? profile = null) =>
        JobRecord.Begin(JobFolder.Open(folder.Path), profile ?? Profile, "AutoSweep test", TimeProvider.System);

    public static Part Part(string id, long picofarads = 100_000) => new() { Id = id,
        Measured = new(picofarads, 0, new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero)) };

    public static PartsTakenIn TakenIn(string id) => new([Part(id)]);

    public static OutputSwept Swept(int output) => new()
    {
        Output = output,
        ToneHertz = 740.123456,
        Reason = PeakStopReason.BoundReached,
        PeakPicofarads = 104_567,
        PeakSdPicofarads = 61.25,
        HalfWidthPicofarads = 7_666.95,
        Q = 13.6387,
        PeakMillivolts = 5.372,
        Law = ResponseLaw.Series,
        Readings = 6,
    };

    public static OutputSurveyed Surveyed(int output, params SurveyFinding[] flags) => new()
    {
        Output = output,
        ToneHertz = flags.Length > 0 ? null : 440.0004,
        Millivolts = 4.25,
        NoiseMillivolts = 0.021,
        Flags = flags,
    };
}
