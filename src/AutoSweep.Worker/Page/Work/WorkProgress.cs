namespace AutoSweep.Worker.Page.Work;

/// <summary>How far a piece of work has come.</summary>
public enum WorkProgress
{
    /// <summary>It goes on.</summary>
    GoingOn,

    /// <summary>All of it is done.</summary>
    Done,

    /// <summary>The person stopped it; what is recorded stays.</summary>
    Stopped,

    /// <summary>A fault stopped it.</summary>
    Failed,
}
