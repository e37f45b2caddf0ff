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

    /// <inheritdoc/>
    public string? Meter => meter.Identity.ToString();

    /// <inheritdoc/>
    public async Task<MeasuredPart?> NextAsync(CancellationToken cancellationToken)
    {
        Queue<CapacitanceReading> run = [];
        while (true)
        {
            var reading = await meter.ReadAsync(cancellationToken);
            if (IsEmpty(reading))
                _wasEmpty = true;
            if (!_wasEmpty || IsEmpty(reading) || reading.Kind != CapacitanceReadingKind.Value)
            {
                run.Clear();
                continue;
            }

            run.Enqueue(reading);
            if (run.Count > options.Readings)
                run.Dequeue();
            if (run.Count == options.Readings && Agree(run))
                return Take(run);
        }
    }

    /// <inheritdoc/>
    public Task AskForAsync(int output, IReadOnlyList<string> parts, CancellationToken cancellationToken) =>
        meter.ShowAsync($"{output}: {string.Join(" + ", parts)}", cancellationToken);

    /// <inheritdoc/>
    public Task FinishAsync(CancellationToken cancellationToken) => meter.ShowAsync("done", cancellationToken);

    /// <inheritdoc/>
    public async Task SignalAsync(bool isFine, CancellationToken cancellationToken)
    {
        await meter.BeepAsync(cancellationToken);
        if (!isFine)
            await meter.BeepAsync(cancellationToken);
    }

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
