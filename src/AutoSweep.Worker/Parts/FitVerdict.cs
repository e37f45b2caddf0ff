namespace AutoSweep.Worker.Parts;

/// <summary>Whether measured parts may be soldered in.</summary>
public enum FitVerdict
{
    /// <summary>Within the loss limit.</summary>
    Good,

    /// <summary>Near what the ledger says, but outside the loss limit: the output needs other parts.</summary>
    OutsideLimit,

    /// <summary>So far from what the ledger says that another part must be on the clips, or one is broken or loose.</summary>
    WrongPart,
}
