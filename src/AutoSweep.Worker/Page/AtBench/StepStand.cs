namespace AutoSweep.Worker.Page.AtBench;

/// <summary>How a step of a job stands.</summary>
public enum StepStand
{
    /// <summary>Something before it is missing.</summary>
    NotYet,

    /// <summary>It can begin.</summary>
    Open,

    /// <summary>It was begun and can go on.</summary>
    BrokenOff,

    /// <summary>It is done.</summary>
    Done,
}
