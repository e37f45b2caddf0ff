using System.Globalization;
using System.Text;
using AutoSweep.Core.Magnets;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Magnets;

/// <summary>docs/levelling.md says what the program does; AUTOSWEEP_ACCEPT=1 writes its tables anew.</summary>
public class LevellingPageTests
{
    private static readonly MarkedPage Page = new("docs/levelling.md");
    private static readonly MagnetGuidanceOptions Options = new();

    [Fact]
    public void The_defaults_table_is_the_programs() => Page.AssertPart("defaults", Table(
        ["what", "default", "meaning"],
        [
            ["`HalfBandDecibels`", $"{Figure(Options.HalfBandDecibels)} dB", "how far a level may be off, to either side"],
            ["`Budget`", Figure(Options.Budget), "the most moves for one rod"],
            ["`HandShare`", Figure(Options.HandShare), "one standard deviation of a distance, as a share of it"],
            ["`LockingMillimetres`", $"{Figure(Options.LockingMillimetres)} mm", "one standard deviation of what locking shifts"],
            ["`SmallestMillimetres`", $"{Figure(Options.SmallestMillimetres)} mm", "the lightest tap"],
            ["`OvershootMillimetres`", $"{Figure(Options.OvershootMillimetres)} mm", "how much further out before it comes back"],
            ["`ReserveMillimetres`", $"{Figure(Options.ReserveMillimetres)} mm", "what must be left at the wheel for sure"],
            ["`InwardShare`", Figure(Options.InwardShare), "the most of the known gap that one move in may use up"],
            ["`HandSigmas`", Figure(Options.HandSigmas), "standard deviations of hand and lock that a move in must survive"],
            ["`ProbeDecibels`", $"{Figure(Options.ProbeDecibels)} dB", "what the first move out of a rod that is to go in should change"],
            ["`LargestGrowth`", Figure(Options.LargestGrowth), "the most that a move may be longer than the last"],
            ["`MagnetRod.UnmeasuredGapMillimetres`", $"{Figure(MagnetRod.UnmeasuredGapMillimetres)} mm", "the gap taken for granted where no leaf was put in"],
        ]));

    [Fact]
    public void The_worked_example_is_a_real_conversation() =>
        Page.AssertPart("example", Table(["move", "asked for", "made", "level over target", "slope believed (95 %)"], Example()));

    private static IEnumerable<string[]> Example()
    {
        var (decibels, hand) = (4.0, 1.1);
        var guidance = new MagnetGuidance(new(64, 0.3), Options);
        guidance.Tell(new(decibels, 0.03));
        yield return ["as found", "", "", $"{Figure(decibels)} dB", Believed(guidance)];
        for (; guidance.Next() is GuidanceStep.Move { Order: var order }; hand = 2 - hand)
        {
            var made = order.OutwardMillimetres * hand;
            decibels -= 30 * made;
            guidance.Tell(new(decibels, 0.03, order));
            yield return [Figure(guidance.Moves), $"{order.Direction.ToString().ToUpperInvariant()} {order.Millimetres.ToString("0.000", CultureInfo.InvariantCulture)} mm",
                $"{Math.Abs(made).ToString("0.000", CultureInfo.InvariantCulture)} mm",
                    $"{decibels.ToString("0.00", CultureInfo.InvariantCulture).Replace("-", "−", StringComparison.Ordinal)} dB", Believed(guidance)];
        }

        var result = ((GuidanceStep.Done)guidance.Next()).Result;
        yield return ["**end**", $"`{result.Ending}`", "", "", ""];
    }

    private static string Believed(MagnetGuidance guidance) => string.Create(CultureInfo.InvariantCulture,
        $"{guidance.Slope.Median:0.0} dB/mm ({guidance.Slope.Quantile(0.025):0.0} to {guidance.Slope.Quantile(0.975):0.0})");

    private static string Table(string[] head, IEnumerable<string[]> rows)
    {
        var text = new StringBuilder();
        foreach (var row in rows.Prepend([.. head.Select(_ => "---")]).Prepend(head))
            text.Append("| ").AppendJoin(" | ", row).Append(" |\n");
        return text.ToString();
    }

    private static string Figure(double value) => value.ToString(CultureInfo.InvariantCulture);
}
