using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Matching;

/// <summary>Finds what to buy: the fewest E24 and E96 values that cure the outputs left outside, with the parts that a match left
/// over.</summary>
/// <remarks>
/// E24 values are taken at 5 % and E96 values at 1 %, the tolerances that IEC 60063 ties to them. A piece is taken to lie anywhere in its
/// tolerance with equal chance (an assumption: makers sort). It fits where the output's loss stays within the limit.
/// </remarks>
public sealed class BuyingAdvisor(MatchOptions options)
{
    // A thousandth for the meter that will measure the bought part: the accuracy of a common bench LCR meter.
    private const double BoughtUncertainty = 0.001;
    private const long Least = 1_000;
    private const long Most = 1_000_000;

    // Beside how many of the best parts from stock a bought value is thought of for each output.
    private const int PartsBeside = 3;

    /// <summary>The buying list.</summary>
    /// <param name="outside">The outputs that a match left without parts.</param>
    /// <param name="left">The parts that it left over.</param>
    public BuyingList Advise(IReadOnlyList<MatchTarget> outside, IReadOnlyList<Part> left)
    {
        BuyingOption[] ways = [.. outside.SelectMany(target => Options(target, left))];
        var curable = ways.Select(way => way.Output).ToHashSet();
        var chosen = new BuyingModel(ways, options.Seed).Choose();
        var lines = chosen.GroupBy(way => (way.Series, way.NominalPicofarads)).Select(line => new BuyingLine(
            line.Key.Series.Name, line.Key.NominalPicofarads, line.Key.Series.ToleranceLetter, line.Sum(way => way.Pieces),
                [.. line.Select(way => way.Output).Order()],
            line.All(way => way.Chance >= 1)));
        return new([.. lines.OrderBy(line => line.NominalPicofarads)],
            [.. outside.Select(target => target.Output).Where(output => !curable.Contains(output)).Order()]);
    }

    private IEnumerable<BuyingOption> Options(MatchTarget target, IReadOnlyList<Part> left)
    {
        IEnumerable<Part?> beside = options.MostParts > 1 ? [null, .. left.Where(part => target.RequiredVolts <= 0
            || part.RatedVolts >= target.RequiredVolts)] : [null];
        BuyingOption[] all = [.. beside.SelectMany(part => Options(target, part)).Where(option => option.IsReasonable)];
        var few = all.Where(option => option.Pieces <= BuyingOption.FewPieces).ToArray();
        return (few.Length > 0 ? few : all)
            .GroupBy(option => (option.Series, option.NominalPicofarads))
            .SelectMany(same => same.OrderByDescending(option => option.Chance).ThenBy(option => option.Beside, StringComparer.Ordinal)
                .Take(PartsBeside));
    }

    private IEnumerable<BuyingOption> Options(MatchTarget target, Part? beside)
    {
        var uncertain = BoughtUncertainty * target.Wanted.Picofarads;
        var spread = Math.Sqrt((target.SdPicofarads * target.SdPicofarads) + (uncertain * uncertain)
            + Math.Pow(beside?.Measured.UncertaintyPicofarads ?? 0, 2));
        if (new LevelLoss(target with { SdPicofarads = spread }).Window(options.LossLimitDecibels) is not { } window)
            yield break;
        var (least, most) = (window.Least - (beside?.Measured.Picofarads ?? 0), window.Most - (beside?.Measured.Picofarads ?? 0));
        foreach (var series in new[] { PreferredSeries.E24, PreferredSeries.E96 })
        {
            var (low, high) = ToleranceLetters.Percent[series.ToleranceLetter];
            foreach (var value in series.Between(Math.Max(Least, (long)(least / (1 + (high / 100)))),
                Math.Min(Most, (long)(most / (1 + (low / 100))))))
                yield return new(target.Output, series, value, beside?.Id,
                    Chance(value * (1 + (low / 100)), value * (1 + (high / 100)), least, most));
        }
    }

    private static double Chance(double lowest, double highest, double least, double most) =>
        Math.Max(0, (Math.Min(highest, most) - Math.Max(lowest, least)) / (highest - lowest));
}
