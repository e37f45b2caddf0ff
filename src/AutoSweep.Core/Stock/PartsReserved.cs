namespace AutoSweep.Core.Stock;

/// <summary>Parts were reserved for outputs of a job. A part that the job holds already moves to the output that is named here.</summary>
/// <param name="Job">The job's name in the ledger.</param>
/// <param name="Reservations">The parts and their outputs.</param>
/// <param name="Released">Parts that the job gives back in the same breath.</param>
public sealed record PartsReserved(string Job, IReadOnlyList<PartReservation> Reservations, IReadOnlyList<string>? Released = null)
    : StockEvent;
