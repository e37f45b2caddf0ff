using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;

namespace AutoSweep.Worker.Terminal;

/// <summary>A ledger's event in words.</summary>
internal static class StockEventText
{
    public static string Of(StockEvent what) => what switch
    {
        PartsTakenIn { Parts: [var one] } taken => $"{one.Id} taken in, {one.Capacitance} ({taken.Source})",
        PartsTakenIn taken => $"{taken.Parts.Count} parts taken in, {taken.Parts[0].Id} to {taken.Parts[^1].Id} ({taken.Source})",
        PartMeasuredAgain measured => $"{measured.Part} measured again, {new Capacitance(measured.Measured.Picofarads)}",
        PartsReserved reserved => $"{reserved.Reservations.Count} parts reserved, {reserved.Released?.Count ?? 0} released: {reserved.Job}",
        PartsReleased released => $"{string.Join(' ', released.Parts)} released: {released.Job}",
        PartsFitted fitted => $"{string.Join(' ', fitted.Parts)} fitted at output {fitted.Output}: {fitted.Job}",
        PartScrapped scrapped => $"{scrapped.Part} scrapped: {scrapped.Why}",
        OldCapacitorRemoved { Measured: { } measured } old =>
            $"old capacitor of output {old.Output}: {new Capacitance(measured.Picofarads)}: {old.Job}",
        OldCapacitorRemoved old => $"old capacitor of output {old.Output}: not a capacitor any more: {old.Job}",
        BinsFixed bins => bins.CutsPicofarads is { } cuts ? $"bins fixed at {cuts.Count} cut points" : "bins given up",
        LedgerEntryWithdrawn withdrawn => $"entry {withdrawn.Sequence} taken back",
        LedgerLinesSetAside aside => $"{aside.Lines.Count} damaged lines set aside in {aside.Copy}",
        _ => what.GetType().Name,
    };
}
