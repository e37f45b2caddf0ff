namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A fact that needs a pty.</summary>
public sealed class PtyFactAttribute : FactAttribute
{
    public PtyFactAttribute()
    {
        if (!PtyPair.IsHere)
            Skip = "This system has no pty.";
    }
}
