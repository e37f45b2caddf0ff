namespace AutoSweep.Core.Tests.Curve.Support;

/// <summary>A fact that needs Python with SciPy and statsmodels; shown as skipped, not passed, where they are not installed.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class StatisticsFactAttribute : FactAttribute
{
    public StatisticsFactAttribute()
    {
        if (RobustReference.Program is null)
            Skip = "Python with SciPy and statsmodels is not installed (apt-get install python3-statsmodels).";
    }
}
