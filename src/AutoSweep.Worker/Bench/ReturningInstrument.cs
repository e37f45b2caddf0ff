using AutoSweep.Core;
using AutoSweep.Instruments.Links;

namespace AutoSweep.Worker.Bench;

/// <summary>An instrument that may be lost in the middle of work outside a job's stages: it is waited for, and the work that it broke off is begun again.</summary>
/// <typeparam name="TInstrument">Its kind.</typeparam>
/// <param name="first">The instrument, open; owned from now on.</param>
/// <param name="place">Where it is, and how it is known again.</param>
/// <param name="gaps">Where the person is told of a gap.</param>
/// <param name="clock">The bench's clock.</param>
public sealed class ReturningInstrument<TInstrument>(
    TInstrument first, InstrumentPlace<TInstrument> place, IGapTeller gaps, TimeProvider clock) : IAsyncDisposable
    where TInstrument : class, IAsyncDisposable
{
    private readonly string _resource = ResourceName.Parse(place.Resource).ToString();
    private readonly string _identity = place.Identity(first);
    private readonly SilenceCount _silences = new();
    private TInstrument? _present = first;

    /// <summary>The instrument as it is open now.</summary>
    public TInstrument Present => _present ?? throw new ObjectDisposedException(place.Name);

    /// <summary>Notes that it has answered with a reading, in the middle of longer work.</summary>
    public void Answered() => _silences.Answered();

    /// <summary>Works with the instrument; after a gap the work is begun again, and must use nothing of what it read before.</summary>
    /// <param name="work">The work.</param>
    /// <param name="cancellationToken">Ends the work or the wait.</param>
    /// <exception cref="BenchFaultException">A fault that waiting does not mend.</exception>
    public async Task<TResult> UseAsync<TResult>(Func<TInstrument, Task<TResult>> work, CancellationToken cancellationToken)
    {
        while (true)
        {
            try
            {
                var result = await work(Present);
                Answered();
                return result;
            }
            catch (BenchFaultException fault) when (IsMine(fault))
            {
                if (_silences.IsFull(fault))
                    throw;
                await ReturnAsync(fault, cancellationToken);
            }
        }
    }

    /// <summary>The same, for work without a result.</summary>
    public Task UseAsync(Func<TInstrument, Task> work, CancellationToken cancellationToken) => UseAsync(async instrument =>
    {
        await work(instrument);
        return true;
    }, cancellationToken);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        var present = _present;
        _present = null;
        if (present is not null)
            await present.DisposeAsync();
    }

    private bool IsMine(BenchFaultException fault) => string.Equals(fault.LostResource, _resource, StringComparison.OrdinalIgnoreCase);

    private async Task ReturnAsync(BenchFaultException fault, CancellationToken cancellationToken)
    {
        gaps.Missing(MissingWords.Of(place.Name, _resource, fault));
        await DisposeAsync();
        await Reopening.Tries(clock).ExecuteAsync(async cancel => await IsBackAsync(cancel), cancellationToken);
        gaps.Back($"The {place.Name} is back. {place.GoesOn}");
    }

    private async ValueTask<bool> IsBackAsync(CancellationToken cancellationToken)
    {
        try
        {
            _present = await SameAsync(cancellationToken);
            return true;
        }
        catch (BenchFaultException fault) when (Reopening.IsStillMissing(fault))
        {
            gaps.StillMissing(MissingWords.Of(place.Name, _resource, fault));
            return false;
        }
    }

    private async Task<TInstrument> SameAsync(CancellationToken cancellationToken)
    {
        var opened = await place.Open(cancellationToken);
        if (place.Identity(opened) is var identity && identity == _identity)
            return opened;
        await opened.DisposeAsync();
        throw new BenchFaultException(
            BenchFault.WrongIdentity, identity, $"{_identity}, which took the readings of before", "connect that one again, or stop and begin anew");
    }
}
