using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Stock;

/// <summary>Matches a job's swept outputs with the stock, reserves the parts and writes the match into the job's journal.</summary>
/// <param name="record">The job, open.</param>
/// <param name="ledger">The stock.</param>
/// <param name="clock">Tells the time that the search takes.</param>
public sealed class JobMatch(JobRecord record, StockLedger ledger, TimeProvider clock)
{
    // Each time another bench took one of the chosen parts while the search ran. Three in a row is a very busy shop.
    private const int MostTries = 5;

    /// <summary>Matches and reserves.</summary>
    /// <param name="wishes">What was decided by hand.</param>
    /// <param name="options">How to match.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <exception cref="BenchFaultException">Nothing is swept, a pin cannot be, or the ledger cannot be used.</exception>
    public async Task<JobMatchResult> MatchAsync(MatchWishes wishes, MatchOptions options, CancellationToken cancellationToken)
    {
        var job = StockJob.NameOf(record.State);
        for (var attempt = 1; ; attempt++)
        {
            var stock = ledger.Read();
            var request = Request(stock, job, wishes);
            var match = new Matcher(options, clock).Match(request, cancellationToken);
            var answer = await ledger.AppendAsync(now => Reservation(now, job, match), cancellationToken);
            if (answer.Refusal is null)
                return Journal(match, answer, options, request);
            if (attempt == MostTries)
                answer.OrFault();
        }
    }

    private MatchRequest Request(StockState stock, string job, MatchWishes wishes)
    {
        var fitted = stock.HeldBy(job, PartStatus.Fitted);
        var targets = MatchTargets.Of(record.State, wishes.RequiredVolts).Where(target => !fitted.ContainsKey(target.Output)).ToList();
        if (targets.Count == 0)
            throw new BenchFaultException(BenchFault.StockRefused,
                $"no output of {record.Folder.Path} is swept, has a peak and waits for parts ({fitted.Count} are fitted)",
                "one such output or more", "sweep first") { AtTerminal = "autosweep sweep --resume --job " + record.Folder.Path };
        return new(targets, [.. stock.FreeFor(job)])
        {
            Pinned = wishes.Pinned,
            Excluded = wishes.Excluded,
            Earlier = wishes.Afresh ? new() : stock.HeldBy(job, PartStatus.Reserved)
                .ToDictionary(held => held.Key, held => (IReadOnlyList<string>)[.. held.Value.Select(part => part.Id)]),
        };
    }

    private static PartsReserved? Reservation(StockState now, string job, MatchResult match)
    {
        List<PartReservation> reservations = [.. match.Outputs.SelectMany(output =>
            (output.Combination?.Parts ?? []).Select(part => new PartReservation(part.Id, output.Target.Output)))];
        var kept = reservations.Select(one => one.Part).ToHashSet();
        string[] released = [.. now.HeldBy(job, PartStatus.Reserved).Values.SelectMany(parts => parts).Select(part => part.Id)
            .Where(id => !kept.Contains(id))];
        return reservations.Count + released.Length == 0 ? null : new(job, reservations, released);
    }

    private JobMatchResult Journal(MatchResult match, LedgerAnswer answer, MatchOptions options, MatchRequest request)
    {
        record.Append(new PartsMatched
        {
            Ledger = ledger.Path,
            LedgerSequence = answer.Entry?.Sequence ?? answer.State.Sequence,
            Outputs = [.. match.Outputs.Select(Told)],
            LossLimitDecibels = options.LossLimitDecibels,
            Outside = match.Outside,
            PartsUsed = match.PartsUsed,
            Moved = match.Moved,
            TotalLoss = match.TotalLoss,
            Seed = options.Seed,
        });
        var left = answer.State.Parts.Values.Where(part => part.Status == PartStatus.Available && !request.Excluded.Contains(part.Id))
            .ToList();
        var outside = match.Outputs.Where(output => output.Combination is null).Select(output => output.Target).ToList();
        return new(match, answer.State, outside.Count == 0 ? null : new BuyingAdvisor(options).Advise(outside, left));
    }

    private static OutputMatched Told(MatchedOutput output) => new(
        output.Target.Output, output.Target.Wanted.Picofarads, [.. (output.Combination?.Parts ?? []).Select(part => part.Id)],
        output.Combination?.Sum.Picofarads ?? 0, output.LossDecibels);
}
