using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Reports;

/// <summary>What a survey noticed, in the words of a record.</summary>
public static class FindingWords
{
    /// <summary>The words.</summary>
    public static string Of(SurveyFinding finding) => finding switch
    {
        SurveyFinding.Dead => "dead",
        SurveyFinding.HumOnly => "hum, no tone",
        SurveyFinding.WrongTone => "wrong tone",
        SurveyFinding.Swapped => "perhaps swapped",
        SurveyFinding.Unsteady => "unsteady",
        _ => "tone not counted",
    };
}
