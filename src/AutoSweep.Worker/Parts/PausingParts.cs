using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Parts;

/// <summary>Parts at a capacitance meter that may be unplugged: it is waited for, and the part in hand is read anew.</summary>
/// <remarks>
/// The readings of a part that was not finished are dropped. A part that was taken in and still lies there is not taken in once more; one that
/// was clipped in its place meanwhile counts.
/// </remarks>
/// <param name="meter">The meter.</param>
/// <param name="options">When readings count as a part.</param>
public sealed class PausingParts(ReturningInstrument<ICapacitanceMeter> meter, PartWatchOptions options) : IPartSource
{
    private readonly PartWatch _watch = new(new PresentMeter(meter), options);
    private (int Output, IReadOnlyList<string> Parts)? _asked;
    private ICapacitanceMeter? _shownBy;
    private MeasuredPart? _last;
    private ICapacitanceMeter? _lastBy;
    private bool? _signalled;

    /// <inheritdoc/>
    public string? Meter => _watch.Meter;

    /// <inheritdoc/>
    public async Task<MeasuredPart?> NextAsync(CancellationToken cancellationToken)
    {
        _last = await meter.UseAsync(async present =>
        {
            await ShowAgainAsync(present, cancellationToken);
            await LookAgainAsync(present, cancellationToken);
            return await _watch.NextAsync(cancellationToken);
        }, cancellationToken);
        (_lastBy, _signalled) = (meter.Present, null);
        return _last;
    }

    /// <inheritdoc/>
    public Task AskForAsync(int output, IReadOnlyList<string> parts, CancellationToken cancellationToken)
    {
        (_asked, _shownBy) = ((output, parts), null);
        return meter.UseAsync(present => ShowAgainAsync(present, cancellationToken), cancellationToken);
    }

    /// <inheritdoc/>
    public Task FinishAsync(CancellationToken cancellationToken) => meter.UseAsync(_ => _watch.FinishAsync(cancellationToken), cancellationToken);

    /// <inheritdoc/>
    public Task SignalAsync(bool isFine, CancellationToken cancellationToken) => meter.UseAsync(async _ =>
    {
        await _watch.SignalAsync(isFine, cancellationToken);
        _signalled = isFine;
    }, cancellationToken);

    // A meter that was off has forgotten what it was showing.
    private async Task ShowAgainAsync(ICapacitanceMeter present, CancellationToken cancellationToken)
    {
        if (_asked is not { } asked || present == _shownBy)
            return;
        await _watch.AskForAsync(asked.Output, asked.Parts, cancellationToken);
        _shownBy = present;
    }

    // Whether the last beep was heard before the link broke, nobody can tell. The part that still lies there waits for it; another one must not hear it.
    private async Task LookAgainAsync(ICapacitanceMeter present, CancellationToken cancellationToken)
    {
        if (_last is not { } last || present == _lastBy)
            return;
        if (await _watch.StillHoldsAsync(last, cancellationToken) && _signalled is { } isFine)
            await _watch.SignalAsync(isFine, cancellationToken);
        _lastBy = present;
    }
}
