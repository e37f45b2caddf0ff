namespace AutoSweep.Worker.ByHand;

/// <summary>The unit of a level that is typed without one.</summary>
public enum EyeUnit
{
    /// <summary>Millivolts.</summary>
    Millivolts,

    /// <summary>Volts.</summary>
    Volts,

    /// <summary>Microvolts.</summary>
    Microvolts,
}
