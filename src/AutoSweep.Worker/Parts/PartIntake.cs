using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Parts;

/// <summary>Takes parts into the stock as they are measured: read, write down, beep, say the bin, next.</summary>
/// <param name="parts">Where the parts come from.</param>
/// <param name="ledger">The stock.</param>
/// <param name="label">What is printed on them.</param>
/// <param name="output">Where the person reads what happened.</param>
/// <param name="clock">The wall clock.</param>
public sealed class PartIntake(IPartSource parts, StockLedger ledger, IntakeLabel label, TextWriter output, TimeProvider clock)
{
    /// <summary>Works until so many parts are in, or the person ends it.</summary>
    /// <param name="most">How many parts to take in; none for no limit.</param>
    /// <param name="cancellationToken">Ends it.</param>
    /// <returns>How many were taken in.</returns>
    public async Task<int> RunAsync(int? most, CancellationToken cancellationToken)
    {
        var count = 0;
        while (count != most && await parts.NextAsync(cancellationToken) is { } measured)
        {
            var part = await TakeInAsync(measured, cancellationToken);
            count++;
            await output.WriteLineAsync($"  {part.Id}  {part.Capacitance,10}  bin {BinOf(part)}");
            await parts.SignalAsync(isFine: true, cancellationToken);
        }

        return count;
    }

    private async Task<Part> TakeInAsync(MeasuredPart measured, CancellationToken cancellationToken)
    {
        Part? taken = null;
        var answer = await ledger.AppendAsync(
            state => new PartsTakenIn([taken = Part(state.FreshIds().First(), measured)], parts.Meter ?? "typed"), cancellationToken);
        answer.OrFault();
        return taken!;
    }

    private Part Part(string id, MeasuredPart measured) => new()
    {
        Id = id,
        Measured = new(measured.Capacitance.Picofarads, measured.StandardUncertaintyPicofarads, clock.GetUtcNow(), measured.Dissipation, parts.Meter),
        NominalPicofarads = label.NominalPicofarads,
        ToleranceLetter = label.ToleranceLetter,
        Dielectric = label.Dielectric,
        RatedVolts = label.RatedVolts,
    };

    private string BinOf(Part part) => part.Bin ?? ledger.Read().Bins().BinOf(part.Measured.Picofarads);
}
