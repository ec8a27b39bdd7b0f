/**
 * A recipe: what is to be made and how, as a text file a person can read and write.
 *
 * <p>In: YAML. Out: an immutable {@link Recipe}, or a {@link RecipeException} with line and column. May use num, mesh.cut, shape,
 * flatten, metal, shop and the YAML reader. Runs nothing and reads no mesh.
 * <p>Start reading at {@link Recipe}; then {@link RecipeReader}, and {@link PanelWords} for what a panel may say.
 */
package blankwright.project;
