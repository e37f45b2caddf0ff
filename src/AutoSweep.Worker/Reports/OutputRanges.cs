using System.Globalization;

namespace AutoSweep.Worker.Reports;

/// <summary>A list of outputs as a person writes it: <c>1 to 5, 7, 9</c>.</summary>
public static class OutputRanges
{
    /// <summary>The list.</summary>
    /// <param name="outputs">Output numbers in any order.</param>
    public static string Text(IEnumerable<int> outputs)
    {
        List<(int First, int Last)> runs = [];
        foreach (var output in outputs.Order())
        {
            if (runs.Count > 0 && output == runs[^1].Last + 1)
                runs[^1] = (runs[^1].First, output);
            else
                runs.Add((output, output));
        }

        return string.Join(", ", runs.Select(Text));
    }

    private static string Text((int First, int Last) run) => (run.Last - run.First) switch
    {
        0 => string.Create(CultureInfo.InvariantCulture, $"{run.First}"),
        1 => string.Create(CultureInfo.InvariantCulture, $"{run.First}, {run.Last}"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{run.First} to {run.Last}"),
    };
}
