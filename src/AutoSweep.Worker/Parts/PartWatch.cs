using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Meters;
using MathNet.Numerics.Statistics;

namespace AutoSweep.Worker.Parts;

/// <summary>Watches a capacitance meter's clips hands-free: a part is read when its readings agree, and the next one only after the clips were empty.</summary>
/// <param name="meter">The meter.</param>
/// <param name="options">When readings count as a part.</param>
public sealed class PartWatch(ICapacitanceMeter meter, PartWatchOptions options) : IPartSource
{
    private bool _wasEmpty = true;
    private bool _askedForOld;

    /// <inheritdoc/>
    public string? Meter => meter.Identity.ToString();

    /// <inheritdoc/>
    public async Task<MeasuredPart?> NextAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            var run = await SteadyAsync(cancellationToken);
            if (run is null)
                _wasEmpty = true;
            else if (_wasEmpty)
                return Take(run);
        }
    }

    /// <summary>After a gap in which nobody could see the clips: whether the part that was read last still lies there.</summary>
    /// <param name="last">That part.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>False where the clips are empty or hold another part, which counts then.</returns>
    public async Task<bool> StillHoldsAsync(MeasuredPart last, CancellationToken cancellationToken)
    {
        var run = _wasEmpty ? null : await SteadyAsync(cancellationToken);
        _wasEmpty = run is null || !IsSame(run.Average(reading => reading.Picofarads), last.Capacitance.Picofarads);
        return !_wasEmpty;
    }

    /// <inheritdoc/>
    public Task AskForAsync(int output, IReadOnlyList<string> parts, CancellationToken cancellationToken)
    {
        // What lay on the clips before the first old capacitor was asked for is not it.
        if (parts.Count == 0 && !_askedForOld)
            (_askedForOld, _wasEmpty) = (true, false);
        return meter.ShowAsync($"{output}: {(parts.Count == 0 ? "OLD" : string.Join(" + ", parts))}", cancellationToken);
    }

    /// <inheritdoc/>
    public Task FinishAsync(CancellationToken cancellationToken) => meter.ShowAsync("done", cancellationToken);

    /// <inheritdoc/>
    public async Task SignalAsync(bool isFine, CancellationToken cancellationToken)
    {
        await meter.BeepAsync(cancellationToken);
        if (!isFine)
            await meter.BeepAsync(cancellationToken);
    }

    // Readings that agree; none when the clips are empty.
    private async Task<Queue<CapacitanceReading>?> SteadyAsync(CancellationToken cancellationToken)
    {
        Queue<CapacitanceReading> run = [];
        while (run.Count < options.Readings || !Agree(run))
        {
            var reading = await meter.ReadAsync(cancellationToken);
            if (IsEmpty(reading))
                return null;
            if (reading.Kind != CapacitanceReadingKind.Value)
                run.Clear();
            else
                run.Enqueue(reading);
            if (run.Count > options.Readings)
                run.Dequeue();
        }

        return run;
    }

    private bool IsSame(double picofarads, double last) => Math.Abs(picofarads - last) <= Math.Max(options.SpreadPicofarads, options.SameAfterGap * last);

    private bool IsEmpty(CapacitanceReading reading) =>
        reading.Kind == CapacitanceReadingKind.NoContact || (reading.Kind == CapacitanceReadingKind.Value && reading.Picofarads < options.EmptyPicofarads);

    private bool Agree(Queue<CapacitanceReading> run)
    {
        var spread = run.Max(reading => reading.Picofarads) - run.Min(reading => reading.Picofarads);
        return spread <= Math.Max(options.SpreadPicofarads, options.Spread * run.Average(reading => reading.Picofarads));
    }

    private MeasuredPart Take(Queue<CapacitanceReading> run)
    {
        _wasEmpty = false;
        var values = run.Select(reading => reading.Picofarads).ToList();
        var mean = values.Mean();
        var scatter = values.StandardDeviation() / Math.Sqrt(values.Count);
        var gain = meter.Accuracy.GainStandardUncertainty * mean;
        var uncertainty = Math.Sqrt((scatter * scatter) + (gain * gain) + Math.Pow(meter.Accuracy.OffsetStandardUncertainty, 2));
        return new(Capacitance.FromPicofarads(mean), uncertainty, run.Average(reading => reading.Dissipation));
    }
}
