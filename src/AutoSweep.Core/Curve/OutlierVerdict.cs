namespace AutoSweep.Core.Curve;

/// <summary>How an output stands to the curve that its neighbours make.</summary>
public enum OutlierVerdict
{
    /// <summary>As near as its neighbours' scatter and the reading's uncertainty let one expect.</summary>
    OnTheCurve,

    /// <summary>Louder than its neighbours explain.</summary>
    Above,

    /// <summary>Softer than its neighbours explain.</summary>
    Below,

    /// <summary>No level, or fewer than three outputs in its group were read: nothing can be said.</summary>
    NotJudged,
}
