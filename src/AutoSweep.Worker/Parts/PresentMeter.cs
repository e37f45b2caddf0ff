using AutoSweep.Core.Calibration;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Parts;

/// <summary>A capacitance meter that may be another object after a gap, though the same meter; a lost one shows as a fault, as ever.</summary>
/// <param name="meter">The meter, owned by whoever made this.</param>
internal sealed class PresentMeter(ReturningInstrument<ICapacitanceMeter> meter) : ICapacitanceMeter
{
    /// <inheritdoc/>
    public InstrumentIdentity Identity => meter.Present.Identity;

    /// <inheritdoc/>
    public double TestHertz => meter.Present.TestHertz;

    /// <inheritdoc/>
    public MeterAccuracy Accuracy => meter.Present.Accuracy;

    /// <inheritdoc/>
    public TimeSpan ReadTime => meter.Present.ReadTime;

    /// <inheritdoc/>
    public async Task<CapacitanceReading> ReadAsync(CancellationToken cancellationToken)
    {
        var reading = await meter.Present.ReadAsync(cancellationToken);
        meter.Answered();
        return reading;
    }

    /// <inheritdoc/>
    public Task ShowAsync(string text, CancellationToken cancellationToken) => meter.Present.ShowAsync(text, cancellationToken);

    /// <inheritdoc/>
    public Task BeepAsync(CancellationToken cancellationToken) => meter.Present.BeepAsync(cancellationToken);

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
