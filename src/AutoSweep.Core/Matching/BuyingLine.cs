namespace AutoSweep.Core.Matching;

/// <summary>A line of a buying list.</summary>
/// <param name="Series">The series of preferred values (IEC 60063).</param>
/// <param name="NominalPicofarads">The value to buy, in picofarads.</param>
/// <param name="ToleranceLetter">Its tolerance (IEC 60062).</param>
/// <param name="Quantity">How many pieces.</param>
/// <param name="Outputs">The outputs that they are for.</param>
/// <param name="Sure">Whether any piece within its tolerance will do; else the quantity holds one that does in 95 of 100 cases.</param>
public sealed record BuyingLine(string Series, long NominalPicofarads, string ToleranceLetter, int Quantity, IReadOnlyList<int> Outputs,
    bool Sure);
