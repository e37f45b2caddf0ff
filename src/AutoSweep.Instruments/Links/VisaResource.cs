namespace AutoSweep.Instruments.Links;

/// <summary>A resource that the installed VISA library is to open, whatever it is: <c>visa:NAME</c>.</summary>
/// <param name="Text">The name as written.</param>
/// <param name="Name">The name for the library: a resource name, or an alias that was given in its set-up program.</param>
public sealed record VisaResource(string Text, string Name) : ResourceName(Text);
