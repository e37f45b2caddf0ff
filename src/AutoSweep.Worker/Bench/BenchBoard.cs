namespace AutoSweep.Worker.Bench;

/// <summary>Where the worker shows its status and screens read it. Screens come and go; the work does not notice.</summary>
public sealed class BenchBoard
{
    private BenchStatus _status = new() { Activity = BenchActivity.Connecting };

    /// <summary>Raised after each change, on the worker's thread; a listener must not block.</summary>
    public event Action<BenchStatus>? Changed;

    /// <summary>Raised when a sound should be heard.</summary>
    public event Action<BenchSound>? Sounded;

    /// <summary>The status now.</summary>
    public BenchStatus Status => _status;

    /// <summary>Shows a changed status.</summary>
    public void Show(Func<BenchStatus, BenchStatus> change)
    {
        _status = change(_status);
        Changed?.Invoke(_status);
    }

    /// <summary>Lets a sound be heard.</summary>
    public void Sound(BenchSound sound) => Sounded?.Invoke(sound);
}
