namespace AutoSweep.Core.Stock;

/// <summary>The series of preferred values in which capacitors are sold (IEC 60063).</summary>
public sealed record PreferredSeries
{
    private PreferredSeries(string name, string toleranceLetter, IReadOnlyList<int> steps) => (Name, ToleranceLetter, Steps) = (name, toleranceLetter, steps);

    /// <summary>24 values a decade. Not a rounded geometric series: the standard keeps older values such as 27, 33 and 47.</summary>
    public static PreferredSeries E24 { get; } = new(
        "E24", "J", [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91]);

    /// <summary>96 values a decade: the nearest whole number to 100 x 10^(i/96).</summary>
    public static PreferredSeries E96 { get; } = new(
        "E96", "F", [.. Enumerable.Range(0, 96).Select(index => (int)Math.Round(100 * Math.Pow(10, index / 96.0)))]);

    /// <summary>The series' name.</summary>
    public string Name { get; }

    /// <summary>The tolerance that the standard ties to the series, as a letter of <see cref="ToleranceLetters"/>.</summary>
    public string ToleranceLetter { get; }

    /// <summary>The values of one decade: two digits in E24, three in E96.</summary>
    public IReadOnlyList<int> Steps { get; }

    /// <summary>The values within a range, ascending.</summary>
    /// <param name="leastPicofarads">The least value in picofarads; 1000 or more, so that every value is a whole number.</param>
    /// <param name="mostPicofarads">The largest value in picofarads.</param>
    public IEnumerable<long> Between(long leastPicofarads, long mostPicofarads)
    {
        for (var decade = 1L; decade * Steps[0] <= mostPicofarads; decade *= 10)
        {
            foreach (var step in Steps)
            {
                if (decade * step >= leastPicofarads && decade * step <= mostPicofarads)
                    yield return decade * step;
            }
        }
    }
}
