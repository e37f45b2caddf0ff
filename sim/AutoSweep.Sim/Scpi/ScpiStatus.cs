namespace AutoSweep.Sim.Scpi;

/// <summary>An instrument's error queue and status registers (IEEE 488.2, 11; SCPI-1999 volume 2, 21.8).</summary>
internal sealed class ScpiStatus
{
    /// <summary>As deep as bench meters' queues are (meters hold 16 to 20).</summary>
    public const int QueueDepth = 20;

    private const int ErrorAvailable = 4;
    private const int MessageAvailable = 16;
    private const int EventSummary = 32;
    private const int MasterSummary = 64;
    private readonly Queue<ScpiError> errors = new();
    private EventStatus events = EventStatus.PowerOn;
    private bool overflown;

    public int EventEnable { get; set; }

    public int ServiceEnable { get; set; }

    public void Report(ScpiError error)
    {
        events |= error.Event;
        if (errors.Count < QueueDepth - 1) errors.Enqueue(error);
        else if (!overflown) errors.Enqueue(ScpiError.QueueOverflow);
        overflown = errors.Count >= QueueDepth;
    }

    public ScpiError NextError()
    {
        overflown = false;
        return errors.TryDequeue(out var error) ? error : ScpiError.None;
    }

    public void Complete() => events |= EventStatus.OperationComplete;

    /// <summary>The event register, which reading clears.</summary>
    public int TakeEvents()
    {
        var taken = (int)events;
        events = EventStatus.None;
        return taken;
    }

    public int StatusByte(bool messageWaiting)
    {
        var status = (errors.Count > 0 ? ErrorAvailable : 0)
            | (messageWaiting ? MessageAvailable : 0)
            | (((int)events & EventEnable) != 0 ? EventSummary : 0);
        return (status & ServiceEnable) != 0 ? status | MasterSummary : status;
    }

    public void Clear()
    {
        errors.Clear();
        (events, overflown) = (EventStatus.None, false);
    }
}
