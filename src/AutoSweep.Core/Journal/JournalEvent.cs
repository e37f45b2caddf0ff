using System.Text.Json.Serialization;

namespace AutoSweep.Core.Journal;

/// <summary>Something that happened in a job, as the journal keeps it for ever. Everything else is folded from these.</summary>
/// <remarks>
/// Names and fields are the file format: a field may be added with a default, none may change its meaning. Folding them is the
/// business of <see cref="JobState"/>.
/// </remarks>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(JobOpened), "jobOpened")]
[JsonDerivedType(typeof(BenchConnected), "benchConnected")]
[JsonDerivedType(typeof(StageStarted), "stageStarted")]
[JsonDerivedType(typeof(OutputRecognised), "outputRecognised")]
[JsonDerivedType(typeof(LevelRead), "levelRead")]
[JsonDerivedType(typeof(OutputSurveyed), "outputSurveyed")]
[JsonDerivedType(typeof(OutputSwept), "outputSwept")]
[JsonDerivedType(typeof(OutputFitted), "outputFitted")]
[JsonDerivedType(typeof(OutputChecked), "outputChecked")]
[JsonDerivedType(typeof(OutputAbandoned), "outputAbandoned")]
[JsonDerivedType(typeof(ClipQuestioned), "clipQuestioned")]
[JsonDerivedType(typeof(EntryWithdrawn), "entryWithdrawn")]
[JsonDerivedType(typeof(LinesSetAside), "linesSetAside")]
[JsonDerivedType(typeof(StageEnded), "stageEnded")]
[JsonDerivedType(typeof(PartsMatched), "partsMatched")]
[JsonDerivedType(typeof(TargetChosen), "targetChosen")]
[JsonDerivedType(typeof(HazardAcknowledged), "hazardAcknowledged")]
[JsonDerivedType(typeof(MagnetRead), "magnetRead")]
[JsonDerivedType(typeof(OutputLevelled), "outputLevelled")]
[JsonDerivedType(typeof(InstrumentLost), "instrumentLost")]
public abstract record JournalEvent;
