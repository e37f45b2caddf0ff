using System.Collections.Immutable;
using System.Globalization;

namespace AutoSweep.Core.Stock;

/// <summary>What is known of the stock: the fold over its ledger. Lists, files and matches are made from this and nothing else.</summary>
/// <remarks>
/// Immutable; <see cref="Apply"/> gives the next state. An event that does not fit the state (see <see cref="StockRules"/>) is never
/// appended; where one stands in a ledger whose damaged lines were set aside, it is passed over.
/// </remarks>
public sealed record StockState
{
    /// <summary>An empty stock.</summary>
    public static StockState Empty { get; } = new();

    /// <summary>The number of the last entry; 0 before the first.</summary>
    public long Sequence { get; private init; }

    /// <summary>Every part that was ever taken in and not taken back, by id.</summary>
    public ImmutableSortedDictionary<string, Part> Parts { get; private init; } = ImmutableSortedDictionary.Create<string,
        Part>(StringComparer.Ordinal);

    /// <summary>The old capacitors by job and output.</summary>
    public ImmutableDictionary<PartPlace, OldCapacitorRemoved> OldCapacitors { get; private init; } = ImmutableDictionary<PartPlace,
        OldCapacitorRemoved>.Empty;

    /// <summary>The bins that the shop fixed; none where they go by the stock at hand.</summary>
    public BinPlan? FixedBins { get; private init; }

    /// <summary>Every entry in order, those that no longer count among them.</summary>
    public ImmutableList<StockEntry> Entries { get; private init; } = [];

    /// <summary>The numbers of the entries that do not count: taken back, or not fitting.</summary>
    public ImmutableHashSet<long> Idle { get; private init; } = [];

    /// <summary>The largest number that an id of the ledger's own making ever had.</summary>
    private long LargestNumber { get; init; }

    /// <summary>Ids that were never given, for parts that have none: <c>P00001</c> and so on.</summary>
    public IEnumerable<string> FreshIds()
    {
        for (var number = LargestNumber + 1; ; number++)
            yield return string.Create(CultureInfo.InvariantCulture, $"P{number:00000}");
    }

    /// <summary>The parts that a job may use: available ones, and those that it holds reserved.</summary>
    public IEnumerable<Part> FreeFor(string job) => Parts.Values.Where(part =>
        part.Status == PartStatus.Available || (part.Status == PartStatus.Reserved && part.Place!.Job == job));

    /// <summary>What a job holds at each output in a state, by output in ascending number.</summary>
    /// <param name="job">The job's name in the ledger.</param>
    /// <param name="status">Reserved or fitted.</param>
    public ImmutableSortedDictionary<int, IReadOnlyList<Part>> HeldBy(string job, PartStatus status) => Parts.Values
        .Where(part => part.Status == status && part.Place?.Job == job)
        .GroupBy(part => part.Place!.Output)
        .ToImmutableSortedDictionary(group => group.Key, group => (IReadOnlyList<Part>)[.. group.OrderByDescending(part =>
            part.Measured.Picofarads)]);

    /// <summary>The bins as they are now: the shop's, or a proposal for what lies in them.</summary>
    public BinPlan Bins() => FixedBins ?? BinPlan.For(
        Parts.Values.Where(part => part.Status is PartStatus.Available or PartStatus.Reserved).Select(part => part.Measured.Picofarads));

    /// <summary>The state after one more entry.</summary>
    public StockState Apply(StockEntry entry)
    {
        var next = StockRules.Refusal(this, entry.Event) is null ? Change(entry) : this with { Idle = Idle.Add(entry.Sequence) };
        return next with
        {
            Sequence = entry.Sequence,
            Entries = Entries.Add(entry),
            LargestNumber = Math.Max(LargestNumber, entry.Event is PartsTakenIn taken
                ? taken.Parts.Select(part => NumberOf(part.Id)).DefaultIfEmpty().Max() : 0),
        };
    }

    /// <summary>The state as if an entry had never been written, and the first later entry that would not fit then; none where all
    /// fit.</summary>
    internal (StockState State, StockEntry? Stranded) Without(long sequence)
    {
        var state = Empty;
        StockEntry? stranded = null;
        foreach (var entry in Entries)
        {
            var counts = entry.Sequence != sequence && !Idle.Contains(entry.Sequence) && entry.Event is not LedgerEntryWithdrawn;
            if (counts && StockRules.Refusal(state, entry.Event) is not null)
                stranded ??= entry;
            else if (counts)
                state = state.Change(entry);
        }

        return (state, stranded);
    }

    private StockState Change(StockEntry entry) => entry.Event switch
    {
        PartsTakenIn taken => this with { Parts = Parts.SetItems(taken.Parts.Select(part => KeyValuePair.Create(part.Id, part))) },
        PartMeasuredAgain measured => Set([measured.Part], part => part with { Measured = measured.Measured }),
        PartsReserved reserved => Reserve(reserved),
        PartsReleased released => Set(released.Parts, Free),
        PartsFitted fitted => Set(fitted.Parts, part => part with { Status = PartStatus.Fitted, Place = new(fitted.Job, fitted.Output) }),
        PartScrapped scrapped => Set([scrapped.Part], part => part with { Status = PartStatus.Scrapped, Place = null }),
        OldCapacitorRemoved old => this with { OldCapacitors = OldCapacitors.SetItem(new(old.Job, old.Output), old) },
        BinsFixed bins => this with { FixedBins = bins.CutsPicofarads is null ? null : new(bins.CutsPicofarads) },
        LedgerEntryWithdrawn withdrawn => Without(withdrawn.Sequence).State with { Idle = Idle.Add(withdrawn.Sequence) },
        _ => this,
    };

    private StockState Reserve(PartsReserved reserved) => reserved.Reservations.Aggregate(
        Set(reserved.Released ?? [], Free),
        (state, one) => state.Set([one.Part], part => part with { Status = PartStatus.Reserved, Place = new(reserved.Job, one.Output) }));

    private static Part Free(Part part) => part with { Status = PartStatus.Available, Place = null };

    private StockState Set(IEnumerable<string> ids, Func<Part, Part> change) =>
        this with { Parts = Parts.SetItems(ids.Select(id => KeyValuePair.Create(id, change(Parts[id])))) };

    private static long NumberOf(string id) =>
        id.StartsWith('P') && long.TryParse(id.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;
}
