using AutoSweep.Core.Calibration;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Fixture;

namespace AutoSweep.Worker.Calibration;

/// <summary>Sets of relays read by a person: the relays close by themselves, what the meter shows is typed.</summary>
/// <param name="box">The relays.</param>
/// <param name="ask">Asks a question and gives the typed line; null at the end of the input.</param>
public sealed class TypedSets(IRelayBox box, Func<string, CancellationToken, Task<string?>> ask) : IRelaySetReader
{
    /// <inheritdoc/>
    /// <exception cref="OperationCanceledException">The person typed q, or the input has ended.</exception>
    public async Task<IReadOnlyList<CalibrationReading>?> ReadAsync(RelaySet relays, int repeats, CancellationToken cancellationToken)
    {
        await box.CloseExactlyAsync(relays, cancellationToken);
        List<CalibrationReading> readings = [];
        while (readings.Count < repeats)
        {
            if (await AskAsync(relays, cancellationToken) is not { } picofarads)
                return null;
            readings.Add(new(relays.Mask, picofarads));
        }

        return readings;
    }

    private async Task<double?> AskAsync(RelaySet relays, CancellationToken cancellationToken)
    {
        var question = (relays.IsEmpty ? "Every relay open" : $"Closed: {relays.Named()}")
            + ". The meter shows (u takes the last back, q stops):";
        while (true)
        {
            var typed = (await ask(question, cancellationToken))?.Trim();
            if (typed is null or "q" or "Q")
                throw new OperationCanceledException("The person stopped the calibration.");
            if (typed is "u" or "U")
                return null;
            if (TypedCapacitance.Picofarads(typed) is { } picofarads)
                return picofarads;
            question = $"'{typed}' is not understood; expected {TypedCapacitance.Expected}:";
        }
    }
}
