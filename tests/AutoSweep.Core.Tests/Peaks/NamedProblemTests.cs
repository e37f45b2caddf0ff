using AutoSweep.Core.Peaks;
using AutoSweep.Core.Tests.Peaks.Support;

namespace AutoSweep.Core.Tests.Peaks;

/// <summary>What a search makes of outputs that go wrong, each with its known answer.</summary>
public class NamedProblemTests
{
    public static TheoryData<NamedProblem, PeakStopReason> Failures => new()
    {
        { new() { Name = "a dead pickup: hum and nothing else", Volts = (_, _) => 0.2e-3, RelativeNoise = 0.01 }, PeakStopReason.ResponseFlat },
        { new() { Name = "the clip is on an unfiltered output", Volts = (_, _) => 6e-3 }, PeakStopReason.ResponseFlat },
        { new() { Name = "a coil that would need 3 µF", Volts = (c, _) => Tuned.Shunt(c, 3000, 8) }, PeakStopReason.NoPeakInRange },
        { new() { Name = "a coil that would need 3 µF, in series", Volts = (c, _) => Tuned.Series(c, 3000, 8) }, PeakStopReason.NoPeakInRange },
        {
            new() { Name = "a coil that peaks below the box's stray", Volts = (c, _) => Tuned.Shunt(c, 20, 8), SmallestPicofarads = 40_000 },
            PeakStopReason.NoPeakInRange
        },
        {
            new() { Name = "a peak just inside the box's largest value", Volts = (c, _) => Tuned.Series(c, 148, 8), LargestPicofarads = 150_000 },
            PeakStopReason.PeakAtEdge
        },
        {
            new() { Name = "a peak just inside the box's smallest value", Volts = (c, _) => Tuned.Shunt(c, 82, 8), SmallestPicofarads = 80_000 },
            PeakStopReason.PeakAtEdge
        },
        { new() { Name = "the clip falls off after three readings", Volts = (c, n) => n <= 3 ? Tuned.Series(c, 120, 10) : 0.03e-3 }, PeakStopReason.LevelLost },
        { new() { Name = "the motor stops after one reading", Volts = (c, n) => n <= 1 ? Tuned.Series(c, 120, 10) : 0 }, PeakStopReason.LevelLost },
        { new() { Name = "nothing at all on the clip", Volts = (_, _) => 0 }, PeakStopReason.LevelLost },
        {
            new() { Name = "a loose clip: every second reading is a third too low", Volts = (c, n) => Tuned.Series(c, 120, 10) * (n % 2 == 0 ? 0.66 : 1) },
            PeakStopReason.ModelDoesNotHold
        },
        {
            new() { Name = "a wobbling wheel: readings jump by far more than their stated noise", Volts = (c, n) => Tuned.Shunt(c, 120, 10) * (1 + 0.25 * Math.Sin(2.9 * n * n)) },
            PeakStopReason.ModelDoesNotHold
        },
        {
            new() { Name = "an output as noisy as it is loud", Volts = (c, _) => Tuned.Series(c, 120, 10), RelativeNoise = 0.2 },
            PeakStopReason.BudgetSpent
        },
    };

    [Theory]
    [MemberData(nameof(Failures))]
    public void A_search_that_cannot_succeed_says_why(NamedProblem problem, PeakStopReason reason)
    {
        var result = problem.Search();
        Assert.True(reason == result.Reason, Told(result));
        Assert.NotEmpty(result.Trace);
    }

    public static TheoryData<NamedProblem, double, double> Recoveries => new()
    {
        { new() { Name = "an ordinary series output", Volts = (c, _) => Tuned.Series(c, 131, 9) }, 131, 9 },
        { new() { Name = "an ordinary shunt output", Volts = (c, _) => Tuned.Shunt(c, 84, 14) }, 84, 14 },
        { new() { Name = "expected value half of the truth", Volts = (c, _) => Tuned.Series(c, 210, 9) }, 210, 9 },
        { new() { Name = "expected value twice the truth", Volts = (c, _) => Tuned.Shunt(c, 52, 9) }, 52, 9 },
        { new() { Name = "hum of a tenth of the peak", Volts = (c, _) => Quadrature(Tuned.Series(c, 140, 20), 0.5e-3) }, 140, 20 },
        { new() { Name = "two unsettled readings", Volts = (c, n) => Tuned.Series(c, 120, 10) * (n is 2 or 4 ? 0.8 : 1), Unsettled = [2, 4] }, 120, 10 },
        { new() { Name = "somebody bumps the bench at the fourth reading", Volts = (c, n) => Tuned.Series(c, 120, 10) * (n == 4 ? 1.25 : 1) }, 120, 10 },
        { new() { Name = "a spike in the first reading", Volts = (c, n) => Tuned.Shunt(c, 120, 10) * (n == 1 ? 1.6 : 1) }, 120, 10 },
        { new() { Name = "the clip loses contact once", Volts = (c, n) => n == 3 ? 0.02e-3 : Tuned.Series(c, 120, 10) }, 120, 10 },
        { new() { Name = "a box of 5 nF steps", Volts = (c, _) => Tuned.Series(c, 118, 6), StepPicofarads = 5000 }, 118, 6 },
    };

    [Theory]
    [MemberData(nameof(Recoveries))]
    public void A_search_finds_the_peak_all_the_same(NamedProblem problem, double peakNanofarads, double q)
    {
        var result = problem.Search();
        Assert.True(result.Reason == PeakStopReason.BoundReached, Told(result));
        // A twentieth of the half-width costs a hundredth of a decibel.
        Assert.True(Math.Abs(result.Peak!.Value.Nanofarads / peakNanofarads - 1) < 0.05 / q, Told(result));
    }

    private static string Told(PeakResult result) =>
        $"{result.Reason} {result.Law} {result.Peak} ± {result.PeakSdPicofarads:0} pF, Q {result.Q:0.0}, hum {result.Hum}: "
        + string.Join(", ", result.Trace.Select(point => $"{point.Reading.Capacitance} {point.Reading.Level}{(point.Used ? "" : " set aside")}"));

    private static double Quadrature(double tone, double hum) => Math.Sqrt(tone * tone + hum * hum);
}
