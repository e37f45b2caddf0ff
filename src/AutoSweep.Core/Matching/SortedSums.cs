namespace AutoSweep.Core.Matching;

/// <summary>Finds the sums of two or three of many sorted values that lie in a range, without trying them all.</summary>
/// <remarks>
/// As the first value rises, the range of partners slides down: two pointers walk the list once, so pairs take a time linear in
/// the values and the sums found, triples one power more.
/// </remarks>
/// <param name="values">The values, ascending.</param>
internal sealed class SortedSums(long[] values)
{
    /// <summary>Takes a first place and the run of partners with which it lies in the range.</summary>
    /// <param name="first">The place of the smallest value.</param>
    /// <param name="from">The first partner's place.</param>
    /// <param name="to">The place behind the last partner.</param>
    public delegate void Run(int first, int from, int to);

    /// <summary>The run of single values in a range.</summary>
    public (int From, int To) Singles(long least, long most) => (LowerBound(least), LowerBound(most + 1));

    /// <summary>Every pair whose sum lies in a range, both places at or after <paramref name="start"/>.</summary>
    public void Pairs(int start, long least, long most, Run found)
    {
        var (low, high) = (values.Length, values.Length);
        for (var first = start; first < values.Length - 1; first++)
        {
            while (low > first + 1 && values[low - 1] + values[first] >= least)
                low--;
            while (high > first + 1 && values[high - 1] + values[first] > most)
                high--;
            if (high <= first + 1)
                return;
            if (Math.Max(low, first + 1) is var from && from < high)
                found(first, from, high);
        }
    }

    /// <summary>Every triple whose sum lies in a range.</summary>
    public void Triples(long least, long most, Action<int, int, int, int> found)
    {
        for (var smallest = 0; smallest < values.Length - 2 && 3 * values[smallest] <= most; smallest++)
        {
            var place = smallest;
            Pairs(smallest + 1, least - values[smallest], most - values[smallest], (first, from, to) => found(place, first, from, to));
        }
    }

    private int LowerBound(long value)
    {
        var place = Array.BinarySearch(values, value);
        if (place < 0)
            return ~place;
        while (place > 0 && values[place - 1] == value)
            place--;
        return place;
    }
}
