namespace AutoSweep.Worker.Page.Guard;

/// <summary>Which screen holds the controls. One does, others watch, until it hands them over, does not answer, or is gone.</summary>
/// <remarks>Safe from several threads.</remarks>
/// <param name="clock">The wall clock.</param>
public sealed class Controls(TimeProvider? clock = null) : IDisposable
{
    /// <summary>How long the holder has to answer a screen that asks; then the screen that asked gets the controls.</summary>
    /// <remarks>Long enough to look up from the generator and press a key, short enough to wait for.</remarks>
    public static readonly TimeSpan AnswerTime = TimeSpan.FromSeconds(20);

    /// <summary>How long the controls stay with a screen that is away: a reload or a short loss of the network costs nobody the controls.</summary>
    public static readonly TimeSpan Grace = TimeSpan.FromSeconds(10);

    private readonly Lock _gate = new();
    private readonly TimeProvider _clock = clock ?? TimeProvider.System;
    private readonly Dictionary<string, int> _here = new(StringComparer.Ordinal);
    private ITimer? _answering;
    private ITimer? _waiting;

    /// <summary>Raised after each change of hands, question and answer; a listener must not block.</summary>
    public event Action? Changed;

    /// <summary>The screen that holds them; none before the first takes them.</summary>
    public string? Holder { get; private set; }

    /// <summary>The screen that asks for them; none when nobody asks.</summary>
    public string? Asker { get; private set; }

    /// <summary>Takes the controls where nobody holds them.</summary>
    /// <returns>Whether the screen holds them now.</returns>
    public bool TryTake(string screen)
    {
        lock (_gate)
        {
            if (Holder is not null)
                return Holder == screen;
            Holder = screen;
        }

        Changed?.Invoke();
        return true;
    }

    /// <summary>A screen is there, for the first time or again; the first of all takes the controls.</summary>
    /// <param name="screen">The screen.</param>
    /// <param name="before">What it was called before it said who it is; what that name held is this screen's.</param>
    public void Arrive(string screen, string? before = null)
    {
        lock (_gate)
        {
            _here[screen] = _here.GetValueOrDefault(screen) + 1;
            if (Holder is null || Holder == before)
                Holder = screen;
            if (Holder == screen)
                End(ref _waiting);
        }

        Changed?.Invoke();
    }

    /// <summary>A screen is gone, or away for a moment.</summary>
    public void Leave(string screen)
    {
        lock (_gate)
        {
            // A reload's new connection may come before the old one is gone.
            if ((_here[screen] = _here.GetValueOrDefault(screen) - 1) > 0)
                return;
            _here.Remove(screen);
            if (Asker == screen)
                Answered();
            if (Holder == screen)
                Begin(ref _waiting, Grace, () => GiveUp(screen));
        }

        Changed?.Invoke();
    }

    /// <summary>A watching screen asks for the controls.</summary>
    /// <returns>Whether it is the one that asks now, or holds them; false where another asked first.</returns>
    public bool Ask(string screen)
    {
        if (TryTake(screen))
            return true;
        lock (_gate)
        {
            if (Asker is not null)
                return Asker == screen;
            Asker = screen;
            Begin(ref _answering, AnswerTime, () => HandOver(screen));
        }

        Changed?.Invoke();
        return true;
    }

    /// <summary>The holder hands the controls to the screen that asks.</summary>
    /// <param name="from">The screen that hands them over; nothing happens where it does not hold them.</param>
    public void HandOverFrom(string from) => Answer(() => Holder == from && Asker is not null, () => Holder = Asker);

    /// <summary>The holder keeps the controls; the question is withdrawn.</summary>
    /// <param name="holder">The screen that keeps them.</param>
    public void Keep(string holder) => Answer(() => Holder == holder && Asker is not null, () => { });

    /// <inheritdoc/>
    public void Dispose()
    {
        _answering?.Dispose();
        _waiting?.Dispose();
    }

    private void HandOver(string asker) => Answer(() => Asker == asker, () => Holder = asker);

    private void GiveUp(string holder) => Answer(() => Holder == holder && !_here.ContainsKey(holder), () => Holder = Asker);

    private void Answer(Func<bool> isSo, Action act)
    {
        lock (_gate)
        {
            if (!isSo())
                return;
            act();
            Answered();
            End(ref _waiting);
        }

        Changed?.Invoke();
    }

    private void Answered()
    {
        Asker = null;
        End(ref _answering);
    }

    private void Begin(ref ITimer? timer, TimeSpan time, Action act)
    {
        End(ref timer);
        timer = _clock.CreateTimer(_ => act(), null, time, Timeout.InfiniteTimeSpan);
    }

    private static void End(ref ITimer? timer)
    {
        timer?.Dispose();
        timer = null;
    }
}
