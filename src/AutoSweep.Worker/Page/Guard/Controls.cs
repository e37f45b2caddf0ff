namespace AutoSweep.Worker.Page.Guard;

/// <summary>Which screen holds the controls. One does, others watch, until it hands them over or is gone.</summary>
public sealed class Controls
{
    private readonly Lock _gate = new();

    /// <summary>Raised after each change of hands; a listener must not block.</summary>
    public event Action? Changed;

    /// <summary>The screen that holds them; none before the first takes them.</summary>
    public string? Holder { get; private set; }

    /// <summary>Takes the controls where nobody holds them.</summary>
    /// <returns>Whether the screen holds them now.</returns>
    public bool TryTake(string screen)
    {
        lock (_gate)
        {
            if (Holder is not null && Holder != screen)
                return false;
            Holder = screen;
        }

        Changed?.Invoke();
        return true;
    }
}
