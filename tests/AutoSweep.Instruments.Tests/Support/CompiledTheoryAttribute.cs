namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A theory that needs the stand-in library, and so a C compiler.</summary>
public sealed class CompiledTheoryAttribute : TheoryAttribute
{
    public CompiledTheoryAttribute()
    {
        if (!VisaStandIn.CanBeBuilt)
            Skip = VisaStandIn.WhyNot;
    }
}
