namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A fact that needs the stand-in library, and so a C compiler.</summary>
public sealed class CompiledFactAttribute : FactAttribute
{
    public CompiledFactAttribute()
    {
        if (!VisaStandIn.CanBeBuilt)
            Skip = VisaStandIn.WhyNot;
    }
}
