using System.Globalization;

namespace AutoSweep.Worker.Curves;

/// <summary>Numbers of outputs for people: 3, 7 to 12, 40.</summary>
public static class NumberList
{
    /// <summary>The text; runs of three and more are drawn together.</summary>
    /// <param name="numbers">Ascending.</param>
    public static string Of(IEnumerable<int> numbers)
    {
        List<(int First, int Last)> runs = [];
        foreach (var number in numbers)
        {
            if (runs.Count > 0 && runs[^1].Last == number - 1)
                runs[^1] = (runs[^1].First, number);
            else
                runs.Add((number, number));
        }

        return string.Join(", ", runs.Select(Text));
    }

    private static string Text((int First, int Last) run) => (run.Last - run.First) switch
    {
        0 => Text(run.First),
        1 => $"{Text(run.First)}, {Text(run.Last)}",
        _ => $"{Text(run.First)} to {Text(run.Last)}",
    };

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
