namespace AutoSweep.Sim.Scoring;

/// <summary>What a job says of one surveyed output, as far as it is scored.</summary>
internal sealed record SurveyRow(int Output, double ToneHertz, double Millivolts, string Flags);
