namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A theory that needs Linux.</summary>
public sealed class PtyTheoryAttribute : TheoryAttribute
{
    public PtyTheoryAttribute()
    {
        if (!PtyPair.IsHere)
            Skip = "This system is not Linux.";
    }
}
