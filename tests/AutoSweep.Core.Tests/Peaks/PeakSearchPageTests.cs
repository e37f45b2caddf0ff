using System.Globalization;
using System.Text;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Tests.Peaks.Support;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Peaks;

/// <summary>docs/peak-search.md says what the program does; AUTOSWEEP_ACCEPT=1 writes its tables anew.</summary>
public class PeakSearchPageTests
{
    private static readonly MarkedPage Page = new("docs/peak-search.md");

    [Fact]
    public void The_defaults_table_is_the_programs()
    {
        var prior = new PeakPrior { Expected = new(1) };
        var options = new PeakSearchOptions { Smallest = new(1), Largest = new(2) };
        Page.AssertPart("defaults", Table(
            ["what", "default", "meaning"],
            [
                ["`PeakSearchOptions.LossBoundDecibels`", Figure(options.LossBoundDecibels), "done when the 95 % bound on the level lost is under this"],
                ["`PeakSearchOptions.Budget`", Figure(options.Budget), "the most readings"],
                ["`PeakPrior.LogSpread`", Figure(prior.LogSpread), "one standard deviation of ln(peak/expected): 40 % off is two of them"],
                ["`PeakPrior.Q`", Figure(prior.Q), "the median of the expected Q"],
                ["`PeakPrior.LogSpreadOfQ`", Figure(prior.LogSpreadOfQ), "one standard deviation of ln(Q)"],
                ["`PeakPrior.LogOddsSeriesOverShunt`", Figure(prior.LogOddsSeriesOverShunt), "series and shunt equally likely"],
                ["`PeakPrior.LogOddsGeneral`", Figure(prior.LogOddsGeneral), "one output in five or six follows neither"],
            ]));
    }

    [Fact]
    public void The_worked_example_is_a_real_search() => Page.AssertPart("example", Table(["reading", "asked", "set", "level", "peak believed", "law"], Example()));

    private static IEnumerable<string[]> Example()
    {
        var levels = SpiceCircuit.Stored("series_winding");
        var search = new PeakSearch(
            new PeakPrior { Expected = Capacitance.FromNanofarads(150) },
            new PeakSearchOptions { Smallest = Capacitance.FromNanofarads(40), Largest = Capacitance.FromNanofarads(300) });
        for (var reading = 1; search.Next() is PeakStep.Read read; reading++)
        {
            var (farads, volts) = levels.MinBy(level => Math.Abs(level.Farads - read.Capacitance.Farads));
            var (set, level) = (Capacitance.FromFarads(farads), Level.FromMillivolts(5 * volts));
            search.Tell(new(set, level, 0.003, TimeSpan.FromSeconds(2 * reading)));
            yield return [$"{reading}", $"{read.Capacitance}", $"{set}", $"{level}", Believed(search.Current), $"{search.Current?.Law}".ToLowerInvariant()];
        }
        var result = ((PeakStep.Done)search.Next()).Result;
        var peak = $"**{result.Peak}** ± {Capacitance.FromPicofarads(result.PeakSdPicofarads)}";
        yield return ["**answer**", $"`{result.Reason}`", "", $"{result.LevelAtPeak}", peak, $"Q {Figure(Math.Round(result.Q, 2))}"];
    }

    private static string Believed(PeakFit? fit) => fit is null ? "" : $"{fit.Peak} ± {Capacitance.FromPicofarads(fit.PeakSdPicofarads)}";

    private static string Table(string[] head, IEnumerable<string[]> rows)
    {
        var text = new StringBuilder();
        foreach (var row in rows.Prepend([.. head.Select(_ => "---")]).Prepend(head))
            text.Append("| ").AppendJoin(" | ", row).Append(" |\n");
        return text.ToString();
    }

    private static string Figure(double value) => value.ToString(CultureInfo.InvariantCulture).Replace("-", "−", StringComparison.Ordinal);
}
