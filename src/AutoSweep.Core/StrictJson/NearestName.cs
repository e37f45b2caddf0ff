namespace AutoSweep.Core.StrictJson;

/// <summary>Which known name a mistyped one was most likely meant to be.</summary>
public static class NearestName
{
    /// <summary>The nearest known name by edit distance, upper and lower case alike.</summary>
    /// <param name="name">The name that was found.</param>
    /// <param name="known">The names that would have done.</param>
    /// <returns>None when even the nearest differs in more than half its letters, and so would be a guess.</returns>
    public static string? To(string name, IEnumerable<string> known) => known
        .Select(candidate => (candidate, distance: Distance(name.ToUpperInvariant(), candidate.ToUpperInvariant())))
        .Where(pair => 2 * pair.distance <= pair.candidate.Length)
        .OrderBy(pair => pair.distance)
        .Select(pair => pair.candidate)
        .FirstOrDefault();

    // Levenshtein's distance, one row at a time.
    private static int Distance(string left, string right)
    {
        var row = Enumerable.Range(0, right.Length + 1).ToArray();
        for (var i = 0; i < left.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i + 1;
            for (var j = 0; j < right.Length; j++)
            {
                var replaced = diagonal + (left[i] == right[j] ? 0 : 1);
                diagonal = row[j + 1];
                row[j + 1] = Math.Min(replaced, 1 + Math.Min(row[j], row[j + 1]));
            }
        }

        return row[^1];
    }
}
