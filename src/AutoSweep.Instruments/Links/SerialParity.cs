namespace AutoSweep.Instruments.Links;

/// <summary>The parity bit of a serial character.</summary>
public enum SerialParity
{
    /// <summary>No parity bit.</summary>
    None,

    /// <summary>An odd number of ones.</summary>
    Odd,

    /// <summary>An even number of ones.</summary>
    Even,
}
