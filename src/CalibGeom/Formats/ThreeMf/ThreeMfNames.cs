namespace CalibGeom.Formats.ThreeMf;

/// <summary>Names that the 3MF core specification 1.4 and the packaging conventions fix, and ours.</summary>
internal static class ThreeMfNames
{
    internal const string Core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
    internal const string TriangleSets = "http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07";

    /// <summary>Colours, textures and mixtures: nothing in it moves a vertex. From memory, not looked up.</summary>
    internal const string Materials = "http://schemas.microsoft.com/3dmanufacturing/material/2015/02";
    internal const string Xml = "http://www.w3.org/XML/1998/namespace";
    internal const string SchemaInstance = "http://www.w3.org/2001/XMLSchema-instance";

    internal const string ContentTypes = "http://schemas.openxmlformats.org/package/2006/content-types";
    internal const string Relationships = "http://schemas.openxmlformats.org/package/2006/relationships";
    internal const string ModelRelationship = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";
    internal const string PrintTicketRelationship = "http://schemas.microsoft.com/3dmanufacturing/2013/01/printticket";
    internal const string ThumbnailRelationship =
        "http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail";
    internal const string RelationshipsType = "application/vnd.openxmlformats-package.relationships+xml";
    internal const string ModelType = "application/vnd.ms-package.3dmanufacturing-3dmodel+xml";

    internal const string ContentTypesPart = "[Content_Types].xml";
    internal const string RootRelationships = "_rels/.rels";
    internal const string ThumbnailPart = "Metadata/thumbnail.png";
    internal const string ModelPart = "3D/3dmodel.model";

    /// <summary>The namespace of this library's own metadata.</summary>
    internal const string Own = "urn:calibgeom:metadata:1";

    /// <summary>The expanded name of the metadata that holds the spec.</summary>
    internal const string SpecMetadata = "{" + Own + "}Spec";
}
