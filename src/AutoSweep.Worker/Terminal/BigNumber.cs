namespace AutoSweep.Worker.Terminal;

/// <summary>A number in digits that can be read from across the bench.</summary>
public static class BigNumber
{
    /// <summary>Rows of a digit.</summary>
    public const int Rows = 10;

    // A cell of a terminal is twice as tall as wide: a dot of three by two comes near a square and lets three digits stand side by side.
    private const int DotColumns = 3;
    private const int DotRows = 2;

    // Each digit as five rows of three dots.
    private static readonly string[] Digits =
    [
        "####.##.##.####",
        "##..#..#..#.###",
        "###..#####..###",
        "###..####..####",
        "#.##.####..#..#",
        "####..###..####",
        "####..####.####",
        "###..#..#..#..#",
        "####.#####.####",
        "####.####..####",
    ];

    /// <summary>The rows of a number, all of one length.</summary>
    /// <param name="number">The number, 0 or more; none gives blank rows.</param>
    public static IReadOnlyList<string> Lines(int? number)
    {
        var digits = number is { } value ? value.ToString("0", System.Globalization.CultureInfo.InvariantCulture) : "";
        return [.. Enumerable.Range(0, Rows).Select(row => string.Join("  ", digits.Select(digit => Line(digit - '0', row / DotRows))))];
    }

    private static string Line(int digit, int row) =>
        string.Concat(Digits[digit].Substring(3 * row, 3).Select(dot => new string(dot == '#' ? '█' : ' ', DotColumns)));
}
