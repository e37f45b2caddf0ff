namespace AutoSweep.Core.Curve;

/// <summary>The three states in which a job reads the level curve.</summary>
public enum CurveStand
{
    /// <summary>The first survey, before anything was touched.</summary>
    AsFound,

    /// <summary>With the new capacitors soldered in: the check's levels where there are any, the first survey's elsewhere.</summary>
    AfterRecap,

    /// <summary>As the generator is handed over: the last survey.</summary>
    AsLeft,
}
