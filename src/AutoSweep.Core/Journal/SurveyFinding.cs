namespace AutoSweep.Core.Journal;

/// <summary>What a survey notices at an output.</summary>
public enum SurveyFinding
{
    /// <summary>Neither tone nor hum to speak of.</summary>
    Dead,

    /// <summary>Hum of the mains but no tone.</summary>
    HumOnly,

    /// <summary>A steady tone that is none of the profile's.</summary>
    WrongTone,

    /// <summary>The tone came where the order of clipping made its neighbour expected, and the neighbour's came next: perhaps swapped terminals.</summary>
    Swapped,

    /// <summary>The level moves more than the wheel's usual wobble and the meter's noise.</summary>
    Unsteady,

    /// <summary>The tone could not be counted; the order of clipping named the output.</summary>
    ToneNotCounted,
}
