namespace AutoSweep.Core.Magnets;

/// <summary>What the guidance wants next.</summary>
public abstract record GuidanceStep
{
    private GuidanceStep()
    {
    }

    /// <summary>Read the level as the rod stands.</summary>
    public sealed record Read : GuidanceStep;

    /// <summary>Move the rod, lock it, read the level and tell it.</summary>
    /// <param name="Order">The move.</param>
    /// <param name="TimesLast">Its distance over the last move's, for a hand that has that one still in its fingers; none for the first.</param>
    public sealed record Move(MagnetMove Order, double? TimesLast) : GuidanceStep;

    /// <summary>The work on this rod is over.</summary>
    /// <param name="Result">How it stands.</param>
    public sealed record Done(GuidanceResult Result) : GuidanceStep;
}
