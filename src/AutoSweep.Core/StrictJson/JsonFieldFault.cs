namespace AutoSweep.Core.StrictJson;

/// <summary>What is wrong with one field of a file.</summary>
/// <param name="Path">The field, as <see cref="JsonFieldPath"/> writes it.</param>
/// <param name="Found">What was found there.</param>
/// <param name="Expected">What was expected instead.</param>
/// <param name="WhatToDo">What to do now.</param>
public sealed record JsonFieldFault(string Path, string Found, string Expected, string WhatToDo);
