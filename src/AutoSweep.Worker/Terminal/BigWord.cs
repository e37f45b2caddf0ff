namespace AutoSweep.Worker.Terminal;

/// <summary>The few words that must be read from across the bench, in the dots of <see cref="BigNumber"/>.</summary>
public static class BigWord
{
    // Five rows of three dots a letter.
    private static readonly Dictionary<char, string> Letters = new()
    {
        ['I'] = "###.#..#..#.###",
        ['N'] = "##.#.##.##.##.#",
        ['O'] = "####.##.##.####",
        ['U'] = "#.##.##.##.####",
        ['T'] = "###.#..#..#..#.",
        ['K'] = "#.##.###.#.##.#",
    };

    /// <summary>The rows of a word, all of one length; letters that are not known are left blank.</summary>
    public static IReadOnlyList<string> Lines(string word) =>
        [.. Enumerable.Range(0, 5).Select(row => string.Join("  ", word.Select(letter => Line(letter, row))))];

    private static string Line(char letter, int row) => Letters.TryGetValue(letter, out var dots)
        ? string.Concat(dots.Substring(3 * row, 3).Select(dot => new string(dot == '#' ? '█' : ' ', 3)))
        : new string(' ', 9);
}
