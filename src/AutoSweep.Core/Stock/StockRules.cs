using System.Globalization;

namespace AutoSweep.Core.Stock;

/// <summary>Which events the stock allows. Checked under the ledger's lock, so that two benches can never both be right.</summary>
public static class StockRules
{
    /// <summary>Why an event is not allowed now; none where it is.</summary>
    public static StockRefusal? Refusal(StockState state, StockEvent what) => what switch
    {
        PartsTakenIn taken => TakeIn(state, taken.Parts),
        PartMeasuredAgain measured => Value(measured.Part, measured.Measured)
            ?? Each(state, [measured.Part], part => part.Status != PartStatus.Scrapped, "a part that is not scrapped"),
        PartsReserved reserved => Reserve(state, reserved),
        PartsReleased released => Each(state, released.Parts, part => part.Place?.Job == released.Job, $"a part that {released.Job} holds"),
        PartsFitted fitted => Fit(state, fitted),
        PartScrapped scrapped => Each(state, [scrapped.Part], part => part.Status == PartStatus.Available, "an available part"),
        OldCapacitorRemoved { Measured: { } value } old => Value($"the old capacitor of output {old.Output}", value),
        BinsFixed { CutsPicofarads: { } cuts } => Cuts(cuts),
        LedgerEntryWithdrawn withdrawn => Withdraw(state, withdrawn.Sequence),
        _ => null,
    };

    /// <summary>What is known of a part in half a sentence.</summary>
    public static string Describe(Part part) => part.Status switch
    {
        PartStatus.Available => $"{part.Id} is available",
        PartStatus.Scrapped => $"{part.Id} is scrapped",
        PartStatus.Reserved => $"{part.Id} is reserved for output {part.Place!.Output} of {part.Place.Job}",
        _ => $"{part.Id} is fitted at output {part.Place!.Output} of {part.Place.Job}",
    };

    private static StockRefusal? TakeIn(StockState state, IReadOnlyList<Part> parts)
    {
        if (parts.Count == 0)
            return new("no parts at all", "one part or more", "nothing was written; try again with parts");
        HashSet<string> seen = [];
        foreach (var part in parts)
        {
            if (string.IsNullOrWhiteSpace(part.Id) || state.Parts.ContainsKey(part.Id) || !seen.Add(part.Id))
                return new($"the id '{part.Id}' is given twice or empty", "a new id for each part",
                    "leave the id out: the ledger gives the next free one");
            if (Value(part.Id, part.Measured) is { } refusal)
                return refusal;
        }

        return null;
    }

    private static StockRefusal? Value(string what, PartMeasurement measured) =>
        measured is { Picofarads: > 0, UncertaintyPicofarads: >= 0 and < double.PositiveInfinity }
        ? null
        : new(string.Create(CultureInfo.InvariantCulture,
            $"{what} measures {measured.Picofarads} pF, uncertainty {measured.UncertaintyPicofarads} pF"),
            "a capacitance above 0 and an uncertainty of 0 or more", "measure it again");

    private static StockRefusal? Reserve(StockState state, PartsReserved reserved) =>
        Each(state, reserved.Released ?? [], part => part.Status == PartStatus.Reserved && part.Place!.Job == reserved.Job,
            $"a part reserved for {reserved.Job}")
        ?? Each(state, [.. reserved.Reservations.Select(one => one.Part)], part =>
            part.Status == PartStatus.Available || (part.Status == PartStatus.Reserved && part.Place!.Job == reserved.Job),
                "an available part");

    private static StockRefusal? Fit(StockState state, PartsFitted fitted) => Each(state, fitted.Parts, part =>
        part.Status == PartStatus.Available || (part.Status == PartStatus.Reserved
            && part.Place == new PartPlace(fitted.Job, fitted.Output)),
        $"a part that is available, or reserved for output {fitted.Output} of {fitted.Job}");

    private static StockRefusal? Each(StockState state, IReadOnlyList<string> ids, Func<Part, bool> isFit, string expected)
    {
        foreach (var id in ids)
        {
            if (!state.Parts.TryGetValue(id, out var part))
                return new($"no part {id} in the ledger", expected, "see autosweep stock list for the ids");
            if (!isFit(part))
                return new(Describe(part), expected, "another bench may have been faster: take another part, or match again");
        }

        return ids.Distinct().Count() == ids.Count ? null : new("a part is named twice", "each part once", "name another part");
    }

    private static StockRefusal? Cuts(IReadOnlyList<long> cuts) => cuts.Zip(cuts.Skip(1)).All(pair => pair.First < pair.Second)
        && cuts.All(cut => cut > 0)
        ? null
        : new("cut points that do not rise", "cut points above 0, each larger than the one before", "write them in ascending order");

    private static StockRefusal? Withdraw(StockState state, long sequence)
    {
        var entry = state.Entries.Find(one => one.Sequence == sequence);
        if (entry is null or { Event: LedgerEntryWithdrawn or LedgerLinesSetAside } || state.Idle.Contains(sequence))
            return new($"entry {sequence} cannot be taken back", "an entry that counts", "see autosweep stock log for the entries");
        return state.Without(sequence).Stranded is { } later
            ? new($"entry {later.Sequence} ({later.Event.GetType().Name}) rests on entry {sequence}",
                "an entry on which no later one rests", $"take entry {later.Sequence} back first")
            : null;
    }
}
