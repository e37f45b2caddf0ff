namespace AutoSweep.Worker.Reports;

/// <summary>One part to be taken out of its bin.</summary>
/// <param name="Bin">The bin.</param>
/// <param name="Part">The part's id.</param>
/// <param name="MeasuredPicofarads">Its measured capacitance in picofarads.</param>
/// <param name="NominalPicofarads">Its printed value in picofarads, where it is known.</param>
/// <param name="Output">The output that it is for.</param>
/// <param name="WantedPicofarads">The capacitance that the output wants, in picofarads.</param>
/// <param name="SumPicofarads">What all its parts add up to, in picofarads.</param>
/// <param name="LossDecibels">The expected loss with them in decibels.</param>
public sealed record PickingRow(
    string Bin, string Part, long MeasuredPicofarads, long? NominalPicofarads, int Output, long WantedPicofarads, long SumPicofarads,
        double LossDecibels);
