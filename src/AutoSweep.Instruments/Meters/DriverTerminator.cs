namespace AutoSweep.Instruments.Meters;

/// <summary>What ends a line.</summary>
public enum DriverTerminator
{
    /// <summary>Line feed.</summary>
    Lf,

    /// <summary>Carriage return, line feed.</summary>
    CrLf,

    /// <summary>Carriage return.</summary>
    Cr,
}
