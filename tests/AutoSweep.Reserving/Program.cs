using System.Globalization;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;

// Arguments: the ledger, the job, a seed. Prints "kind sequence part" for every event that the ledger acknowledged, "refused" for every
// refusal.
// The others may be slow to be given the processor, and none may end by itself.
var ledger = new StockLedger(args[0], TimeProvider.System, new() { Patience = TimeSpan.FromMinutes(5) });
var job = args[1];
var random = new Random(int.Parse(args[2], CultureInfo.InvariantCulture));
while (true)
{
    // Chosen from a look without the lock, so that eight programs often want the same part.
    var state = ledger.Read();
    var available = state.Parts.Values.Where(part => part.Status == PartStatus.Available).Take(8).ToList();
    var held = state.Parts.Values.Where(part => part.Status == PartStatus.Reserved && part.Place!.Job == job).ToList();
    StockEvent what = available.Count > 0 && (held.Count == 0 || random.Next(2) == 0)
        ? new PartsReserved(job, [new(available[random.Next(available.Count)].Id, random.Next(1, 92))])
        : new PartsReleased(job, [held.Count > 0 ? held[random.Next(held.Count)].Id : "none"]);
    var answer = await ledger.AppendAsync(what, CancellationToken.None);
    var (word, part) = what is PartsReserved taken ? ("reserved", taken.Reservations[0].Part)
        : ("released", ((PartsReleased)what).Parts[0]);
    Console.WriteLine(answer.Entry is { } entry ? string.Create(CultureInfo.InvariantCulture, $"{word} {entry.Sequence} {part}")
        : "refused");
}
