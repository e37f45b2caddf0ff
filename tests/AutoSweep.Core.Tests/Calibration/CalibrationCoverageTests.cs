using AutoSweep.Core.Calibration;
using AutoSweep.Core.Tests.Calibration.Support;
using Xunit.Abstractions;

namespace AutoSweep.Core.Tests.Calibration;

/// <summary>Two hundred simulated fixtures of one seed: relay tolerance 3 %, meter noise 0.05 %, stray 20 to 400 pF.</summary>
/// <remarks>The truth is the drawn value; the meter's gain error is drawn within its stated limits.</remarks>
public class CalibrationCoverageTests(ITestOutputHelper output)
{
    private const int Fixtures = 200;

    [Theory]
    [InlineData(true, "type A alone")]
    [InlineData(false, "type A and B")]
    public void The_true_values_lie_in_the_stated_95_percent_intervals_in_92_to_98_of_100_cases(bool meterIsExact, string parts)
    {
        var (inside, insideStray, all) = (0, 0, 0);
        for (var seed = 1; seed <= Fixtures; seed++)
        {
            var box = new MeasuredBox(seed, meterIsExact: meterIsExact);
            var solution = box.Calibrate();
            var stray = meterIsExact ? NoiseAlone(solution.Stray) : solution.Stray;
            insideStray += Inside(stray, box.Stray);
            inside += Inside(stray, box.Stray) + solution.Relays.Zip(box.Relays)
                .Sum(pair => Inside(meterIsExact ? NoiseAlone(pair.First) : pair.First, pair.Second));
            all += 17;
        }

        output.WriteLine($"{parts}: {100.0 * inside / all:0.00} % of {all} values, {100.0 * insideStray / Fixtures:0.0} % of the strays");
        Assert.InRange(100.0 * inside / all, 92, 98);
    }

    [Fact]
    public void Each_relay_and_the_stray_by_itself_keeps_to_its_interval_too()
    {
        var inside = new int[17];
        for (var seed = 1; seed <= Fixtures; seed++)
        {
            var box = new MeasuredBox(seed);
            var solution = box.Calibrate();
            foreach (var (index, value) in ((CalibratedValue[])[solution.Stray, .. solution.Relays]).Index())
                inside[index] += Inside(value, index == 0 ? box.Stray : box.Relays[index - 1]);
        }

        output.WriteLine(string.Join(' ', inside));
        // A binomial of 200 at 95 % lies between 178 and 199 in all but one of a thousand cases; there are 17 of them.
        Assert.All(inside, count => Assert.InRange(count, 178, 200));
    }

    [Fact]
    public void In_a_sound_fixture_nothing_is_found() => Assert.All(
        Enumerable.Range(1, Fixtures), seed => Assert.Empty(new MeasuredBox(seed).Calibrate().Findings));

    [Fact]
    public void A_total_of_many_relays_keeps_to_its_interval()
    {
        var inside = 0;
        for (var seed = 1; seed <= Fixtures; seed++)
        {
            var box = new MeasuredBox(seed);
            var set = (uint)new Random(seed).Next(1, 1 << 16);
            var (total, uncertainty) = box.Calibrate().Total(set);
            var truth = box.Stray + box.Relays.Where((_, relay) => ((set >> relay) & 1) != 0).Sum();
            inside += Math.Abs(total - truth) <= 1.96 * uncertainty ? 1 : 0;
        }

        output.WriteLine($"{100.0 * inside / Fixtures:0.0} % of the totals");
        // The common gain error, of rectangular distribution, weighs most here: 1.96 of its standard uncertainty hold all of it.
        Assert.InRange(inside, 0.92 * Fixtures, Fixtures);
    }

    private static CalibratedValue NoiseAlone(CalibratedValue value) => value with { MeterStandardUncertainty = 0 };

    private static int Inside(CalibratedValue value, double truth) => Math.Abs(value.Picofarads - truth) <= value.ExpandedUncertainty ? 1 : 0;
}
