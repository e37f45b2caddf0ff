using AutoSweep.Core.Stock;

namespace AutoSweep.Worker.Stock;

/// <summary>A CSV file of parts as it was understood: all of it, or why not.</summary>
/// <param name="Parts">The parts; ids are empty where the file gives none.</param>
/// <param name="Troubles">What is wrong, a line of the file each. With one of them nothing is taken in.</param>
public sealed record StockImport(IReadOnlyList<Part> Parts, IReadOnlyList<string> Troubles)
{
    /// <summary>The event that takes the parts in, with a fresh id for each that has none.</summary>
    /// <param name="state">The stock under the ledger's lock.</param>
    /// <param name="source">The file's name.</param>
    public PartsTakenIn AsEvent(StockState state, string source)
    {
        var taken = Parts.Select(part => part.Id).ToHashSet();
        using var fresh = state.FreshIds().Where(id => !taken.Contains(id)).GetEnumerator();
        return new([.. Parts.Select(part => part.Id.Length > 0 ? part : part with { Id = Next(fresh) })], source);
    }

    private static string Next(IEnumerator<string> ids)
    {
        ids.MoveNext();
        return ids.Current;
    }
}
