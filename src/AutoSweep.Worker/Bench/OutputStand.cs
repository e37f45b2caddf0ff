namespace AutoSweep.Worker.Bench;

/// <summary>How an output stands in a stage: what a map of all outputs shows.</summary>
public enum OutputStand
{
    /// <summary>It takes no part in the stage.</summary>
    NotInStage,

    /// <summary>It is still to be done.</summary>
    Open,

    /// <summary>It is at the clips and worked at.</summary>
    AtClips,

    /// <summary>It is done and as it should be.</summary>
    Done,

    /// <summary>It is done, and somebody should look at it.</summary>
    Look,
}
